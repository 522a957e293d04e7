#!/usr/bin/python3
# pictures.py - drives the built program through its states and leaves a picture of each
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# pictures.py PROGRAM EXAMPLES_DIR SCREENSHOT OUT_DIR light|dark WIDTH HEIGHT: the window, on a screen of that size
# pictures.py PROGRAM EXAMPLES_DIR SCREENSHOT OUT_DIR page: the page as it is printed
#
# Prints TAP, a line a picture. A picture is taken when what it is about is there, the screen is another than in the picture
# before and has come to rest; it is good if the program had nothing to warn of. The pictures are there to be looked at.

import ctypes
import os
import shutil
import subprocess
import sys

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from driver import DRAG_STEPS, Failure, Home, Program, box_of, has_focus, in_own_session, wait, xdotool  # noqa: E402

BINARY, EXAMPLES, SCREENSHOT, OUT = (os.path.abspath(path) for path in sys.argv[1:5])
WHAT = sys.argv[5]

# One of each kind, by its name on the sheet
KINDS = {'person': 'Wenna', 'interviewer': 'Ines', 'camera': 'Camera A', 'light-wide': 'L1 key', 'light-panel': 'L2 back',
         'light-point': 'L3 wall', 'boom': 'M1 Boom', 'lavalier': 'M2 Lavalier', 'reflector': 'R1 Reflector', 'lead': 'lead to L1',
         'door': 'door', 'window': 'window 1', 'socket': 'Socket S1', 'table': 'drafting table', 'chest': 'plan chest',
         'radiator': 'radiator', 'noise': 'fridge', 'clock': 'wall clock', 'house-light': 'ceiling lamp 1'}


class Tap:
    """Answers one by one, and the plan at the end."""

    def __init__(self):
        self.count = self.failures = 0

    def answer(self, name, why=None):
        self.count += 1
        self.failures += why is not None
        print('%s %d - %s%s' % ('ok' if why is None else 'not ok', self.count, name, '' if why is None else ': ' + why), flush=True)

    def end(self):
        print('1..%d' % self.count, flush=True)
        return 1 if self.failures else 0


def owns(selection):
    """Whether somebody has taken the selection: so window managers and compositors say that they are there."""
    xlib = ctypes.CDLL('libX11.so.6')
    xlib.XOpenDisplay.restype = ctypes.c_void_p
    xlib.XInternAtom.restype = xlib.XGetSelectionOwner.restype = ctypes.c_ulong
    display = ctypes.c_void_p(xlib.XOpenDisplay(None))
    owner = xlib.XGetSelectionOwner(display, ctypes.c_ulong(xlib.XInternAtom(display, selection.encode(), 0)))
    xlib.XCloseDisplay(display)
    return owner != 0


def start_desktop():
    """A window manager that fills the screen with the window and puts dialogs in its middle, and a compositor that lets them
    have round corners and shadows. Without either the pictures are plainer."""
    desktop = []
    for program, selection in (('openbox', 'WM_S0'), ('xcompmgr', '_NET_WM_CM_S0')):
        if shutil.which(program):
            desktop.append(subprocess.Popen([program], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL))
            wait(lambda: owns(selection), program)
    return desktop


class Look:
    """The window in one theme and size."""

    def __init__(self, tap, theme, width, height):
        self.tap = tap
        self.name = '%s-%sx%s' % (theme, width, height)
        self.settings = {'dark': 'true' if theme == 'dark' else 'false', 'window': '(%s, %s, true)' % (width, height),
                         'units': "'metric'"}
        self.size = int(width), int(height)
        self.last = None

    def take(self, name, program):
        """Of no name: only what the next one must differ from."""
        if name is None:
            self.last = os.path.join(OUT, '%s.before.png' % self.name)
            subprocess.run([SCREENSHOT, self.last], check=True, capture_output=True)
            return
        path = os.path.join(OUT, '%s-%s.png' % (self.name, name))
        done = subprocess.run([SCREENSHOT, path] + ([self.last] if self.last else []), capture_output=True, text=True)
        complaints = program.complaints()
        why = done.stderr.strip() if done.returncode else complaints[0] if complaints else None
        self.tap.answer(os.path.basename(path)[:-4], why)
        self.last = path

    def play(self, act, *files, **settings):
        """An act goes from state to state and names each; one that does not get on fails alone."""
        home = Home(**dict(self.settings, **settings))
        program = None
        self.last = None
        try:
            program = Program(BINARY, home, *files)
            if shutil.which('openbox'):
                wait(lambda: program.size() == self.size, lambda: 'size of the window: %dx%d' % program.size())
            program.park()
            for name in act(program):
                self.take(name, program)
        except (Failure, subprocess.CalledProcessError) as error:
            self.tap.answer('%s in %s' % (self.name, act.__name__), str(error))
        finally:
            if program is not None:
                program.kill()
            home.remove()


def take_in_hand(p, name):
    thing = p.thing(name)
    p.do(thing)
    wait(lambda: has_focus(thing), 'the focus on ' + name)


def let_go(p):
    p.focus_sheet()
    p.find('label', 'Room and job', p.panels['Details'])


def scroll_details(p, clicks):
    """Down, or up; the pointer is in the margin, where no field takes the wheel."""
    left, _, _, _ = box_of(p.panels['Details'])
    xdotool('mousemove', left - 8, p.size()[1] // 2, 'click', '--repeat', abs(clicks), 5 if clicks > 0 else 4)
    p.park()


def dialog(p, name):
    return wait(lambda: p.find_frame(name), 'the window “%s”' % name)


def close_dialog(p):
    p.key('Escape')
    p.wait_for_main('the end of the dialog')


def sheet(p):
    """The example as it opens, things in hand, remarks in hand."""
    yield 'start'
    take_in_hand(p, 'Camera B')
    yield 'camera-in-hand'
    let_go(p)
    for number, text in enumerate(p.remarks()[:3], 1):
        p.point(p.line(text))
        yield 'remark-%d-in-hand' % number
    p.park()
    p.key('Escape')
    p.point(p.thing('Ines'))
    yield 'pointed-at'


def kinds(p):
    """Details of each kind of thing."""
    for kind, name in KINDS.items():
        take_in_hand(p, name)
        yield 'kind-' + kind
    take_in_hand(p, 'Camera A')
    p.do(p.find('push button', 'More', p.panels['Details']))
    p.find('text', 'Sensor width', p.panels['Details'])
    scroll_details(p, 60)
    yield 'kind-camera-more'
    scroll_details(p, -60)
    lens = p.find('combo box', 'Lens', p.panels['Details'])
    p.click(lens)
    yield 'lens-list'
    p.key('Escape')
    height = p.find('text', 'Lens height', p.panels['Details'])
    p.click(height)
    p.key('ctrl+a')
    p.type('tall')
    p.key('Return')
    p.find('alert', 'Lens height: …', p.panels['Details'])
    yield 'refused'


def overlays(p):
    """What is shown on the sheet: nothing, each family alone, all."""
    p.focus_sheet()
    yield None
    p.key('alt+1')
    yield 'shown-none'
    for key, family in enumerate(('sight', 'light', 'sound', 'sun', 'power'), 1):
        p.key('alt+%d' % key)
        yield 'shown-' + family
        p.key('alt+%d' % key)
    p.key('alt+1', 'alt+2', 'alt+3', 'alt+4', 'alt+5')
    yield 'shown-all'
    take_in_hand(p, 'Camera B')
    yield 'shown-all-in-hand'


def remarks(p):
    """The remarks' folds."""
    p.click(p.grades['Fine'])
    wait(lambda: any(text.startswith('Fine: ') for text in p.remarks()), 'what is fine')
    yield 'fine'
    for grade in ('Fix', 'Mind', 'Fine'):
        p.click(p.grades[grade])
    p.find('label', 'What there is to fix or mind is folded away.')
    yield 'folded'


def drags(p):
    """A camera on its way, over the line, and a thing of the Tray on its way in."""
    start = p.centre(p.thing('Camera B'))
    p.press(start)
    p.move(start, (start[0] + 60, start[1] + 40))
    yield 'dragging'
    ines = p.centre(p.thing('Ines'))
    p.move((start[0] + 60, start[1] + 40), (ines[0] + 40, ines[1] + 120))
    wait(lambda: any('line of action' in text for text in p.remarks()), 'a Fix about the line')
    yield 'dragging-over-the-line'
    p.key('Escape')
    p.release()
    flag = p.centre(p.find('list item', 'Flag…', p.panels['Tray']))
    wenna = p.centre(p.thing('Wenna'))
    target = (wenna[0] - 20, wenna[1] - 120)
    windows = p.windows()
    p.press(flag)
    p.move(flag, target)
    wait(lambda: len(p.windows()) > len(windows), 'the picture under the pointer')
    p.move(target, (target[0], target[1] + DRAG_STEPS))
    yield 'tray-drag'
    p.release()
    p.thing('F1 Flag')
    yield 'tray-dropped'


def viewfinders(p):
    """From the picture back, and the cut."""
    take_in_hand(p, 'Camera B')
    p.key('ctrl+f')
    p.find('push button', 'medium, move to…')
    yield 'frame'
    p.key('Escape')
    p.key('alt+6')
    yield 'cut'
    p.key('alt+6')


def menus(p):
    """Menus and the dialogs that they open."""
    take_in_hand(p, 'Camera B')
    yield None
    p.key('Menu')
    yield 'menu-thing'
    p.key('Escape')
    p.click(p.find('push button', 'Menu'))
    yield 'menu-main'
    p.key('Escape')
    p.click(p.find('push button', 'Set-up: …'))
    yield 'menu-setup'
    p.key('Escape')
    p.act('win.copy-setup')
    wait(lambda: len(p.frames()) == 2, 'a question')
    yield 'dialog-copy-setup'
    p.key('Return')
    p.wait_for_main('the end of the question')
    p.click(p.find('push button', 'Set-up: …'))
    yield 'menu-two-setups'
    p.key('Escape')
    p.act('win.compare')
    dialog(p, 'Compare rooms')
    yield 'dialog-compare'
    close_dialog(p)


def dialogs(p):
    """The windows beside the window."""
    p.focus_sheet()
    p.key('ctrl+o')
    dialog(p, 'Open a plan')
    yield 'dialog-open'
    close_dialog(p)
    p.key('ctrl+shift+s')
    dialog(p, 'Save the plan as')
    yield 'dialog-save'
    close_dialog(p)
    p.key('F1')
    wait(lambda: len(p.frames()) == 2, 'the shortcuts')
    yield 'dialog-shortcuts'
    close_dialog(p)
    p.key('ctrl+e')
    page = dialog(p, 'The page')
    yield 'dialog-page'
    p.walk_to(p.find('combo box', 'Paper', page))
    p.key('Return', 'Down', 'Return')
    yield 'dialog-page-letter'
    close_dialog(p)
    p.act('win.type-room')
    dialog(p, 'Type the wall lengths')
    yield 'dialog-room'
    close_dialog(p)
    take_in_hand(p, 'Camera B')
    p.key('Left')
    wait(lambda: p.title().startswith('•'), 'a mark of changes')
    p.key('ctrl+w')
    p.find('push button', 'Stay here')
    yield 'dialog-unsaved'


def room(p):
    """Details of the room and the job, with what is folded at first."""
    details = p.panels['Details']
    for name in ('Surfaces', 'How the room sounds', 'What the place is asked to arrange', 'People to call at the place', 'Limits that remarks use'):
        expander = p.find('push button', name, details)
        closed = box_of(expander)[3]
        p.do(expander)
        wait(lambda: box_of(expander)[3] > closed, 'more under “%s”' % name)
        scroll_details(p, 5 if name in ('Surfaces', 'How the room sounds') else 60)
        yield 'room-' + name.split()[0].lower()
        p.do(expander)
        wait(lambda: box_of(expander)[3] == closed, '“%s” folded again' % name)
        scroll_details(p, -60)


def empty(p):
    """A plan from nothing."""
    p.key('ctrl+n')
    p.find('push button', 'Type the wall lengths', p.sheet)
    yield 'empty'
    p.do(p.find('push button', 'Type the wall lengths', p.sheet))
    frame = dialog(p, 'Type the wall lengths')
    yield 'empty-room-rectangle'
    p.do(p.find('page tab', 'Wall by wall', frame))
    yield 'empty-room-walls'
    close_dialog(p)
    p.walk_to(p.find('push button', 'Draw the room', p.sheet))
    p.key('Return')
    p.find(None, 'Click the first corner…', p.sheet)
    p.key('Return', 'Right', '5', 'Return', 'Up', '3', 'period', '5')
    yield 'empty-room-drawing'
    p.key('Return', 'Left', '5', 'Return', 'Return')
    wait(lambda: p.look('label', '5.00 × 3.50\xa0m…', p.panels['Details']), 'a room')
    yield 'empty-room-made'
    p.do(p.find('push button', 'Person', p.panels['Tray']))
    p.thing('Subject')
    yield 'one-person'


def office(p):
    """The example in which most things go wrong."""
    yield 'office'
    p.point(p.line(p.remarks()[0]))
    yield 'office-remark'


def imperial(p):
    """Feet and inches."""
    yield None
    take_in_hand(p, 'Camera B')
    yield 'imperial'


def wrong_file(p):
    """A file that is no plan."""
    p.find('push button', 'Close', wait(lambda: next((frame for frame in p.frames() if frame != p.frame), None), 'a dialog'))
    yield 'dialog-error'


def newer(p):
    """A plan of a newer version can be looked at only."""
    p.find('label', 'This plan was made by a newer version…')
    take_in_hand(p, 'Camera B')
    yield 'newer'


def recovered(p):
    """The program is ended before a change was saved, and comes back."""
    take_in_hand(p, 'Camera B')
    p.key('Left', 'Left')
    wait(lambda: p.title().startswith('•'), 'a mark of changes')
    wait(lambda: p.has_journal(), 'a journal of the change')
    p.kill()
    again = Program(BINARY, p.home)
    try:
        p.application, p.frame = again.application, again.frame
        wait(lambda: again.look('label', 'Lookroom was ended before this plan was saved…', again.frame), 'the news')
        yield 'recovered'
    finally:
        again.kill()


def take_window(tap, theme, width, height):
    look = Look(tap, theme, width, height)
    files = Home()
    cut_off = files.write('cut off.lookroom', '{ "format": "lookroom-plan", "version": 1, "setups": [')
    with open(os.path.join(EXAMPLES, 'loft.lookroom'), encoding='utf-8') as loft:
        later = files.write('later.lookroom', loft.read().replace('"version": 2', '"version": 3'))

    desktop = start_desktop()
    for act in (sheet, kinds, overlays, remarks, drags, viewfinders, menus, dialogs, room, empty):
        look.play(act)
    look.play(office, os.path.join(EXAMPLES, 'bare-office.lookroom'))
    look.play(imperial, units="'imperial'")
    look.play(wrong_file, cut_off)
    look.play(newer, later)
    look.play(recovered)
    for program in desktop:
        program.kill()
    files.remove()


def take_page(tap, name, example, *options, grey=False):
    path = os.path.join(OUT, name)
    done = subprocess.run([BINARY, 'page', os.path.join(EXAMPLES, example), '-o', path + '.pdf', *options],
                          capture_output=True, text=True)
    if done.returncode == 0:
        done = subprocess.run(['pdftoppm', '-png', '-r', '150', '-singlefile', *(['-gray'] if grey else []), path + '.pdf', path],
                              capture_output=True, text=True)
    tap.answer(name, done.stderr.strip() or None)


def take_pages(tap):
    take_page(tap, 'page-a4', 'loft.lookroom', '--paper', 'a4')
    take_page(tap, 'page-letter', 'loft.lookroom', '--paper', 'letter', '--units', 'imperial')
    take_page(tap, 'page-grey', 'loft.lookroom', '--paper', 'a4', grey=True)
    take_page(tap, 'page-office', 'bare-office.lookroom', '--paper', 'a4')


def main():
    if WHAT != 'page':
        in_own_session(*[int(pixels) for pixels in sys.argv[6:8]])
    os.makedirs(OUT, exist_ok=True)
    tap = Tap()
    if WHAT == 'page':
        take_pages(tap)
    else:
        take_window(tap, WHAT, *sys.argv[6:8])
    return tap.end()


sys.exit(main())
