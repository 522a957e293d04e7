# driver.py - the built program as a person meets it: a window to look at, a pointer, a keyboard
#
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Runs under an X server and a session bus of its own. What stands in the window is read through assistive technology's
# interface; the pointer and the keys are the X server's, by xdotool. Nothing sleeps for a guessed time: every step waits for
# what it is about, with a deadline.

import os
import re
import shutil
import subprocess
import sys
import tempfile
import time

import gi

gi.require_version('Atspi', '2.0')
from gi.repository import Atspi, GLib  # noqa: E402

DEADLINE_S = 15.0
LOOK_EVERY_S = 0.03
SESSION = 'LOOKROOM_TEST_SESSION'
DRAG_STEPS = 12
PANELS = ('Tray', 'Sheet', 'Viewfinders', 'Details', 'Remarks')
GRADES = ('Fix', 'Mind', 'Fine')

SETTINGS_INI = '''[Settings]
gtk-font-name=Inter 10
gtk-enable-animations=0
gtk-cursor-blink=0
'''

# Where the window manager knows nothing of shadows, GTK draws a border round windows that fill the screen, too
STYLE = 'window.solid-csd.maximized { border: none; padding: 0; box-shadow: none; }\n'


def start_screen(width, height):
    """An X server that nobody else uses; it looks for a free number itself. Returns the process and its DISPLAY."""
    reading, writing = os.pipe()
    server = subprocess.Popen(['Xvfb', '-displayfd', str(writing), '-screen', '0', '%dx%dx24' % (width, height),
                               '-extension', 'MIT-SHM', '-noreset', '-nolisten', 'tcp'], pass_fds=[writing], stderr=subprocess.DEVNULL)
    os.close(writing)
    with os.fdopen(reading) as answer:
        number = answer.readline().strip()
    if not number:
        raise Failure('the X server did not start')
    return server, ':' + number


def in_own_session(width=1920, height=1200):
    """Starts the script again under an X server and a session bus of its own, unless that is done, and ends with its exit code.
    What the bus's own programs say is kept out of the output, which is read by a machine."""
    if os.environ.get(SESSION) == '1':
        return

    server, display = start_screen(width, height)
    env = dict(os.environ, DISPLAY=display, **{SESSION: '1'})
    env.pop('XAUTHORITY', None)
    words = ['dbus-run-session', '--', sys.executable, *sys.argv]
    try:
        with subprocess.Popen(words, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as child:
            for line in child.stdout:
                if not line.startswith('SpiRegistry'):
                    print(line, end='', flush=True)
            errors = [line for line in child.stderr.read().splitlines() if 'dbus-daemon' not in line and 'dbind' not in line]
    finally:
        server.kill()
        server.wait()
    print('\n'.join(line for line in errors if line), file=sys.stderr)
    sys.exit(child.returncode)


class Failure(Exception):
    """What was waited for did not come."""


def wait(condition, what, seconds=DEADLINE_S):
    """Returns what @condition returns once that is true; a thing that goes away while it is looked at is looked for again."""
    end = time.monotonic() + seconds
    while True:
        try:
            found = condition()
        except GLib.Error:
            found = None
        if found:
            return found
        if time.monotonic() > end:
            raise Failure(what() if callable(what) else 'did not come: ' + what)
        time.sleep(LOOK_EVERY_S)


def walk(node):
    """The node and all under it. What goes while it is looked at is None, and is passed over."""
    if node is None:
        return
    yield node
    for i in range(node.get_child_count()):
        yield from walk(node.get_child_at_index(i))


def matches(node, role, name):
    """@name is the whole name or, with an ellipsis at its end, how it begins. GTK repeats a mnemonic label: "_Save Save"."""
    if role is not None and node.get_role_name() != role:
        return False
    if name is None:
        return True
    have = node.get_name()
    if name.endswith('…') and have.startswith(name[:-1]):
        return True
    return name == have or have.replace('_', '') == name + ' ' + name


def box_of(node):
    """x, y, width, height in the window; a thing that is not laid out has no size."""
    extents = node.get_component_iface().get_extents(Atspi.CoordType.WINDOW)
    return extents.x, extents.y, extents.width, extents.height


def has_focus(node):
    return node.get_state_set().contains(Atspi.StateType.FOCUSED)


def is_shown(node):
    _, _, width, height = box_of(node)
    return width > 0 and height > 0


def xdotool(*words):
    return subprocess.run(['xdotool', *[str(word) for word in words]], check=True, capture_output=True, text=True).stdout


class Home:
    """A home folder that nobody has lived in, so that no run knows of another; gone with the run."""

    def __init__(self, **settings):
        """@settings: the program's own, as they stand in its file, with an underscore for a hyphen"""
        self.path = tempfile.mkdtemp(prefix='lookroom-home-')
        self.write('config/gtk-4.0/settings.ini', SETTINGS_INI)
        self.write('config/gtk-4.0/gtk.css', STYLE)
        rows = ['%s=%s\n' % (key.replace('_', '-'), value) for key, value in settings.items()]
        self.write('config/lookroom/settings', '[lookroom]\n' + ''.join(rows))

    def write(self, name, text):
        path = self.file(name)
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, 'w', encoding='utf-8') as file:
            file.write(text)
        return path

    def file(self, name):
        return os.path.join(self.path, name)

    def environment(self):
        env = {key: value for key, value in os.environ.items()
               if key not in ('GSETTINGS_BACKEND', 'GTK_A11Y', 'G_DEBUG', 'XDG_DATA_DIRS')}
        for name in ('config', 'data', 'cache', 'state'):
            os.makedirs(self.file(name), exist_ok=True)
            env['XDG_%s_HOME' % name.upper()] = self.file(name)
        env.update(HOME=self.path, GDK_BACKEND='x11', GSK_RENDERER='cairo', GDK_DEBUG='gl-disable', LC_ALL='C.UTF-8',
                   TZ='UTC0')
        return env

    def remove(self):
        shutil.rmtree(self.path, ignore_errors=True)


class Program:
    """The program with a window."""

    def __init__(self, binary, home, *files):
        self.binary = binary
        self.home = home
        self.log = open(home.file('stderr'), 'ab+')
        self.process = subprocess.Popen([binary, *files], env=home.environment(), cwd=home.path, stderr=self.log)
        self.application = wait(self._find_application, 'the program on the accessibility bus')
        self.application.set_cache_mask(Atspi.Cache.NONE)
        self.frame = wait(lambda: self.find_frame('…Lookroom'), 'a window')
        self.xid = wait(self._find_xid, 'a window on the screen')
        self.panels = {name: self.find('panel', name, self.frame) for name in PANELS}
        self.sheet = self.panels['Sheet']
        self.remark_list = self.find('list', 'Remarks', self.panels['Remarks'])
        self.grades = {grade: self.find('push button', grade, self.panels['Remarks']) for grade in GRADES}
        wait(lambda: is_shown(self.sheet), 'a sheet with a size')

    def _find_application(self):
        if self.process.poll() is not None:
            raise Failure('the program ended with %d: %s' % (self.process.returncode, self.said()))
        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            application = desktop.get_child_at_index(i)
            if application is not None and application.get_process_id() == self.process.pid:
                return application
        return None

    def _find_xid(self):
        found = subprocess.run(['xdotool', 'search', '--onlyvisible', '--pid', str(self.process.pid), '--name', 'Lookroom$'],
                               capture_output=True, text=True).stdout.split()
        return found[-1] if found else None

    # What stands in the window

    def frames(self):
        return [self.application.get_child_at_index(i) for i in range(self.application.get_child_count())]

    def wait_for_main(self, what):
        """Until the windows beside it are gone and the keys go to the main one again."""
        wait(lambda: len(self.frames()) == 1, what)
        wait(lambda: xdotool('getwindowfocus', 'getwindowname').strip() == self.title(), 'the keys to the main window')

    def find_frame(self, name):
        """The window of this name; "…" at its beginning or end stands for any text."""
        for frame in self.frames():
            if frame is None:
                continue
            have = frame.get_name()
            if name == have or name.startswith('…') and have.endswith(name[1:]) or name.endswith('…') and have.startswith(name[:-1]):
                return frame
        return None

    def frame_with(self, *roles_and_names):
        """The window beside the main one that holds things of all these roles and names."""
        pairs = list(zip(roles_and_names[::2], roles_and_names[1::2]))
        return next((frame for frame in self.frames() if frame != self.frame
                     and all(self.look(role, name, frame) for role, name in pairs)), None)

    def look(self, role, name, within=None):
        """The first such thing that is there now, or None."""
        roots = [within] if within is not None else [frame for frame in self.frames() if frame is not None]
        for root in roots:
            for node in walk(root):
                if matches(node, role, name):
                    return node
        return None

    def find(self, role, name, within=None):
        return wait(lambda: self.look(role, name, within), '%s “%s”' % (role, name))

    def gone(self, role, name, within=None):
        wait(lambda: self.look(role, name, within) is None, 'the end of %s “%s”' % (role, name))

    def title(self):
        return self.frame.get_name()

    def things(self):
        """What stands on the sheet: name to description."""
        children = [self.sheet.get_child_at_index(i) for i in range(self.sheet.get_child_count())]
        return {child.get_name(): child.get_description() for child in children if child.get_role_name() == 'image'}

    def thing(self, name):
        return self.find('image', name, self.sheet)

    def counts(self):
        """How many remarks of each grade, as the buttons beside them say."""
        return {grade: int(self.grades[grade].get_description()) for grade in GRADES}

    def remarks(self):
        """Each line that is shown, as it is read aloud: "Fix: …"."""
        return [label.get_name() for label in self._remark_labels()]

    def plan_as_shown(self):
        """All of the plan that can be read in the window."""
        return self.title(), self.things(), self.counts(), self.remarks()

    def _remark_labels(self):
        """Of every row: its box's first child with a name that begins with a grade."""
        for i in range(self.remark_list.get_child_count()):
            for node in walk(self.remark_list.get_child_at_index(i)):
                if node.get_role_name() == 'label' and node.get_name().split(':')[0] in GRADES:
                    yield node
                    break

    def line(self, text):
        """The row of the remark."""
        return wait(lambda: next((label for label in self._remark_labels() if label.get_name() == text), None), text).get_parent()

    # Hand

    def focus(self):
        xdotool('windowfocus', self.xid)

    def focus_sheet(self):
        """The keys go to the sheet, and nothing is in hand."""
        thing = self.sheet.get_child_at_index(0)
        self.do(thing)
        wait(lambda: has_focus(thing), 'the focus on the sheet')
        self.key('Escape')
        wait(lambda: has_focus(self.sheet), 'the focus on the sheet itself')

    def walk_to(self, node, key='Tab', limit=40):
        """Presses the key until the focus is on it or in it."""
        for _ in range(limit):
            if any(has_focus(part) for part in walk(node)):
                return
            before = self.focused(self.application)
            self.key(key)
            wait(lambda: before is None or not has_focus(before), 'a move of the focus on “%s”' % key)
        raise Failure('“%s” does not reach “%s”' % (key, node.get_name()))

    def origin(self):
        """Where the window's content starts on the screen: GTK draws a border of its own where nobody draws shadows."""
        rows = dict(row.split('=') for row in xdotool('getwindowgeometry', '--shell', self.xid).split())
        _, _, width, height = box_of(self.frame)
        return (int(rows['X']) + (int(rows['WIDTH']) - width) // 2, int(rows['Y']) + (int(rows['HEIGHT']) - height) // 2)

    def windows(self):
        """All that the program has on the screen, by the X server's numbers."""
        return xdotool('search', '--onlyvisible', '--pid', self.process.pid).split()

    def size(self):
        """Of the window's content."""
        return box_of(self.frame)[2:]

    def centre(self, node):
        x, y, width, height = box_of(node)
        left, top = self.origin()
        return left + x + width // 2, top + y + height // 2

    def point(self, node):
        """The pointer stands over it."""
        wait(lambda: is_shown(node), 'a size')
        xdotool('mousemove', *self.centre(node))

    def park(self):
        """The pointer stands where nothing is, in the bar above."""
        left, top = self.origin()
        xdotool('mousemove', left + self.size()[0] // 3, top + 3)

    def click(self, node, button=1):
        self.point(node)
        xdotool('click', button)

    def do(self, node):
        """What assistive technology does in place of a click. A button shows that for a quarter of a second before it acts."""
        node.get_action_iface().do_action(0)

    def act(self, name):
        """An action of the window, such as a menu offers."""
        actions = self.frame.get_action_iface()
        number = next(i for i in range(actions.get_n_actions()) if actions.get_action_name(i) == name)
        actions.do_action(number)

    def press(self, at):
        xdotool('mousemove', *at, 'mousedown', 1)

    def move(self, start, end):
        """In steps, as a hand does: the first ones only pass the threshold of a drag."""
        for i in range(1, DRAG_STEPS + 1):
            xdotool('mousemove', *[round(a + (b - a) * i / DRAG_STEPS) for a, b in zip(start, end)])

    def release(self):
        xdotool('mouseup', 1)

    def key(self, *names):
        xdotool('key', *names)

    def type(self, text):
        xdotool('type', '--delay', 4, text)

    def type_path(self, dialog, path):
        """In the file dialog: the whole path over whatever name is there. Opening, "/" makes the field that takes it."""
        wait(lambda: self.find_frame(dialog), 'the dialog “%s”' % dialog)
        frame = self.find_frame(dialog)
        wait(lambda: self.focused(frame), 'a focus in “%s”' % dialog)
        if self.look('text', None, frame) is None:
            self.key('slash')
            entry = self.find('text', None, frame)
            wait(lambda: entry_text(entry) == '/', 'a field for a path')
        self.key('ctrl+a')
        self.type(path)
        wait(lambda: any(entry_text(node) == path for node in walk(frame) if node.get_role_name() == 'text'), 'the path as typed')
        self.key('Return')

    def focused(self, root):
        for node in walk(root):
            if has_focus(node):
                return node
        return None

    def has_journal(self):
        folder = self.home.file('cache/lookroom/journal')
        return os.path.isdir(folder) and any(name.endswith('.journal') for name in os.listdir(folder))

    # The end

    def ended(self):
        return self.process.poll() is not None

    def quit(self):
        self.key('ctrl+q')
        wait(self.ended, 'the end of the program')
        return self.process.returncode

    def kill(self):
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait()

    def said(self):
        with open(self.home.file('stderr'), encoding='utf-8', errors='replace') as log:
            return log.read().strip()

    def complaints(self):
        """What the program and its libraries warned of; what the accessibility bus says at its start is not ours."""
        return [line.strip() for line in self.said().splitlines()
                if ('WARNING' in line or 'CRITICAL' in line or 'ERROR' in line) and 'dbind' not in line]


def entry_text(node):
    text = node.get_text_iface()
    return text.get_text(0, text.get_character_count()) if text is not None else ''


def spoken_place_m(description):
    """"5.07 m from the left wall, 3.76 m from the lower wall." """
    return tuple(float(figure) for figure in re.findall(r'([\d.]+)\sm from the (?:left|lower) wall', description))


def read_lines(path):
    with open(path, encoding='utf-8') as file:
        return file.readlines()


def side_of_line(plan, name):
    """Sign of the side of the line of action on which an item stands: a cross product, here and not in the program."""
    line, at = plan['line'], plan['items'][name]
    along = line['to-x-m'] - line['from-x-m'], line['to-y-m'] - line['from-y-m']
    off = at['x-m'] - line['from-x-m'], at['y-m'] - line['from-y-m']
    return 1 if along[0] * off[1] - along[1] * off[0] > 0 else -1


def mirrored(point, a, b):
    """@point on the other side of the line through @a and @b, as far from it."""
    along = b[0] - a[0], b[1] - a[1]
    share = ((point[0] - a[0]) * along[0] + (point[1] - a[1]) * along[1]) / (along[0] ** 2 + along[1] ** 2)
    foot = a[0] + share * along[0], a[1] + share * along[1]
    return round(2 * foot[0] - point[0]), round(2 * foot[1] - point[1])


class Tap:
    """Steps that build on each other, in TAP: after one that failed the rest have failed, too."""

    def __init__(self):
        self.steps = []

    def step(self, function):
        self.steps.append(function)
        return function

    def run(self, on_failure):
        print('1..%d' % len(self.steps), flush=True)
        broken = None
        for number, step in enumerate(self.steps, 1):
            title = step.__doc__.rstrip('.')
            try:
                if broken is None:
                    step()
                    print('ok %d - %s' % (number, title), flush=True)
                    continue
            except Exception as error:  # whatever it is, it is told and the pictures are kept
                broken = number
                print('# %s: %s' % (type(error).__name__, str(error).replace('\n', '\n# ')), flush=True)
                on_failure(number)
            after = '' if broken == number else ' # after step %d' % broken
            print('not ok %d - %s%s' % (number, title, after), flush=True)
        return 0 if broken is None else 1


def check(truth, *what):
    if not truth:
        raise Failure(' '.join(str(word) for word in what))


def check_equal(have, want, what):
    check(have == want, '%s: %r, expected %r' % (what, have, want))


if __name__ == '__main__':
    sys.exit('driver.py is used by the journeys and the pictures')
