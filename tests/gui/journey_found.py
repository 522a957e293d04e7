# journey_found.py - the room is not as measured: found, changed, refitted and handed over
#
# SPDX-License-Identifier: GPL-3.0-or-later

import json
import os
import re
import subprocess

from driver import check, check_equal, entry_text, has_focus, is_shown, wait, walk

WALL_M = 5.40
SHORTER_M = 0.30
LAMP_MM = 500


def add_found_steps(tap, journey, command, loft):
    """The loft as found, its west wall 30 cm shorter: what stands at the walls goes along, Refit moves the set, the page tells it."""
    state = {}
    path = journey.home.file('loft.lookroom')
    pdf = journey.home.file('page.pdf')

    def plan(name=path):
        with open(name, encoding='utf-8') as file:
            return json.load(file)

    def put_lamp_at_wall():
        """The loft with its lamp for the wall nearly at the south wall, where 30 cm are too much."""
        loft_plan = plan(loft)
        lamp = next(light for light in loft_plan['setups'][0]['lights'] if light['id'] == 'light-3')
        lamp['y-mm'] = LAMP_MM
        with open(path, 'w', encoding='utf-8') as file:
            json.dump(loft_plan, file)

    def n_fix():
        """By the command line, with the light, which the window hears of a moment later."""
        return json.loads(command('check', path, '--json')[1])['counts']['fix']

    @tap.step
    def as_found():
        """from the menu of set-ups, a copy as found is made under a name that is offered, and shown."""
        put_lamp_at_wall()
        p = journey.start(path)
        state['counts'] = {'Fix': n_fix()}
        wait(lambda: p.counts()['Fix'] == state['counts']['Fix'], lambda: 'to fix: %r' % p.counts())
        p.click(p.find('label', 'Drawing loft, as planned', p.frame))
        wait(lambda: len(p.windows()) > 1, 'the menu')
        p.key('a')
        name = wait(lambda: next((node for frame in p.frames() if frame != p.frame for node in walk(frame)
                                  if node.get_role_name() == 'text'), None), 'a name to be typed')
        check_equal(entry_text(name), 'Drawing loft, as found', 'the name that is offered')
        p.key('Return')
        wait(lambda: len(p.frames()) == 1, 'the end of the dialog')
        p.focus()
        p.find('label', 'Drawing loft, as found', p.frame)

    @tap.step
    def shorter():
        """typed shorter in Details, the wall takes along what stands at it, and something is to fix."""
        p = journey.program
        p.focus_sheet()
        entry = p.find('text', '5, west wall', p.panels['Details'])
        for _ in range(4):
            if not any(has_focus(node) for node in walk(p.panels['Details'])):
                before = p.focused(p.application)
                p.key('F6')
                wait(lambda: not has_focus(before), 'a move of the focus')
        p.walk_to(entry, limit=60)
        p.key('ctrl+a')
        p.type('%.2f' % (WALL_M - SHORTER_M))
        p.key('Return')
        wait(lambda: p.counts()['Fix'] > state['counts']['Fix'], lambda: 'nothing more to fix: %r' % p.counts())
        state['found'] = p.counts()
        print('# %d to fix' % state['found']['Fix'])

    @tap.step
    def refit():
        """Refit shows what it would do, and Enter does it; less is to fix then."""
        p = journey.program
        p.key('ctrl+shift+r')
        said = p.find('label', 'Move the set…', p.frame)
        print('# ' + said.get_name())
        check(re.search(r'\d\.\d\d\sm', said.get_name()) and 'to fix become' in said.get_name(), said.get_name())
        button = p.find('push button', 'Move the set', p.frame)
        wait(lambda: has_focus(button), 'the focus on the button')
        check_equal(p.counts(), state['found'], 'counts before it is done')
        p.key('Return')
        wait(lambda: p.counts()['Fix'] < state['found']['Fix'], lambda: 'as much to fix as before: %r' % p.counts())

    @tap.step
    def differences():
        """the differences stand beside the sheet: the wall, and the set that moved as one; a key takes them away and brings them back."""
        p = journey.program
        pane = p.find('panel', 'Differences', p.frame)
        rows = [node.get_name() for node in walk(pane) if node.get_role_name() == 'label']
        check(any(re.search(r'\(west wall\) is 30\scm shorter', row) for row in rows), rows)
        check(any(row.startswith('The whole set moved ') for row in rows), rows)
        p.key('ctrl+shift+d')
        wait(lambda: is_shown(p.panels['Tray']), 'the tray in their place')
        p.key('ctrl+shift+d')
        wait(lambda: is_shown(p.find('panel', 'Differences', p.frame)), 'the differences again')
        p.key('Escape')
        wait(lambda: is_shown(p.panels['Tray']), 'the tray after Escape')
        p.focus_sheet()

    @tap.step
    def saved():
        """saved, the command line tells the same differences."""
        p = journey.program
        p.key('ctrl+s')
        wait(lambda: not p.title().startswith('•'), 'a title without a mark of changes')
        check_equal(plan()['setups'][1]['found-of'], plan()['setups'][0]['id'], 'what it is as found of')
        code, text, _ = command('diff', path, '--json')
        check_equal(code, 0, 'exit code')
        found = json.loads(text)['differences']
        walls = [row for row in found if row['type'] == 'wall' and row['wall'] == 4]
        check_equal(len(walls), 1, 'the wall')
        check(abs(walls[0]['from'] - walls[0]['to'] - SHORTER_M) < 1e-6, walls)
        state['moved'] = next(row['text'] for row in found if row['type'] == 'set')

    @tap.step
    def export():
        """the page has them in a block of its own."""
        p = journey.program
        p.click(p.find('push button', 'Page…'))
        wait(lambda: p.find_frame('The page'), 'the page')
        p.do(p.find('push button', 'Save PDF…', p.find_frame('The page')))
        p.type_path('Save the page as PDF', pdf)
        wait(lambda: os.path.exists(pdf), 'the PDF')
        wait(lambda: p.find_frame('The page') is None, 'the end of the dialog')
        text = subprocess.run(['pdftotext', '-layout', pdf, '-'], capture_output=True, text=True, check=True).stdout
        flat = re.sub(r'\s+', ' ', text)
        check('Otherwise than planned' in flat, text)
        check(re.search(r'\(west wall\) is 30 cm shorter', flat), text)
        check(state['moved'].split(',')[0].replace('\xa0', ' ') in flat, state['moved'], text)

    @tap.step
    def undo():
        """Refit is one step: undone, it is to fix again what was."""
        p = journey.program
        p.key('ctrl+z')
        wait(lambda: p.counts()['Fix'] == state['found']['Fix'], lambda: 'to fix after undo: %r' % p.counts())
        p.key('ctrl+shift+z')
        wait(lambda: p.counts()['Fix'] < state['found']['Fix'], lambda: 'to fix after redo: %r' % p.counts())
        p.key('ctrl+s')
        wait(lambda: not p.title().startswith('•'), 'a title without a mark of changes')

    @tap.step
    def quit_program():
        """nothing was complained of."""
        check_equal(journey.program.quit(), 0, 'exit code')
        check_equal(journey.program.complaints(), [], 'warnings')
