"""More faults after the init of the installed system has started."""
from bench import LOGIN
from scenes.odd import odd
from scenes.userland import SYSTEM, boot, unit, us


@us('apparmor-denies-bus', 'apparmor-denies', general=['unit-fails'], also=['bus-daemon-fails'], stage='done', end=[LOGIN], linger=12)
def _(b):
    """a profile of AppArmor that allows nothing is loaded for the message bus"""
    def edit(r):
        (r / SYSTEM / 'apparmor.service').unlink()
        d = r / SYSTEM / 'sysinit.target.wants'
        d.mkdir(exist_ok=True)
        w = d / 'apparmor.service'
        w.unlink(missing_ok=True)
        w.symlink_to('/lib/systemd/system/apparmor.service')
        (r / 'etc/apparmor.d/usr.bin.dbus-daemon').write_text('profile dbus-daemon /usr/bin/dbus-daemon {\n}\n')
    boot(b, edit)


@us('temporary-folder-is-a-dead-link', 'tmp-or-run-unwritable', general=['unit-fails'], also=['login-service-fails'], stage='done', end=[LOGIN], linger=12)
def _(b):
    """/tmp is a link to a folder on a disk that is no longer there"""
    def edit(r):
        (r / 'tmp').rmdir()
        (r / 'tmp').symlink_to('/srv/scratch/tmp')
    boot(b, edit, bus='ahci')


@us('login-module-gone', 'login-loop', stage='done', end=['login: (.|\n)*login: '], linger=4, limit=200)
def _(b):
    """the login stack (PAM) names a module that is not installed; the right password is typed"""
    def edit(r):
        f = r / 'etc/pam.d/login'
        f.write_text(f.read_text() + 'session required pam_lantern.so\nauth required pam_lantern.so\n')
    b.type(LOGIN, 'root\r', 2)
    b.type('Password: ', 'lantern\r', 2)
    boot(b, edit)


@us('upgrade-cut-off', 'interrupted-upgrade', general=['unit-fails'], also=['library-damaged-in-userland', 'bus-daemon-fails'], stage='done', end=[LOGIN], linger=12)
def _(b):
    """a power cut during an upgrade: libraries and a program of the message bus and a unit file have no bytes"""
    def edit(r):
        for f in list((r / 'usr/lib/x86_64-linux-gnu').glob('libdbus-1.so.3.*')) + list((r / 'usr/lib/x86_64-linux-gnu').glob('libexpat.so.1.*')):
            f.write_bytes(b'')
        (r / 'usr/lib/systemd/system/e2scrub_all.timer').write_bytes(b'')
        (r / 'var/lib/dpkg/updates/0001').write_text('Package: dbus\nStatus: install ok half-installed\n')
    boot(b, edit)


@odd('odd-unit-restarts-machine', 'userland', general=['unit-fails', 'firmware-restarts-over-and-over'], end=['Restarting system|reboot: '], linger=2, limit=200)
def _(b):
    """a unit of the workshop fails and asks for a restart of the machine (FailureAction=reboot)"""
    boot(b, lambda r: unit(r, 'lantern-seal.service', '[Unit]\nDescription=Look at the seal of the case\nFailureAction=reboot\nBefore=systemd-user-sessions.service\n[Service]\nType=oneshot\nExecStart=/bin/sh -c "echo seal is broken; exit 9"\nStandardOutput=journal+console\n'))


@odd('odd-first-questions', 'userland', general=['userland-stops-silently', 'job-waits-forever'], quiet=60, end=['Press any key to proceed', 'Please enter'], linger=4)
def _(b):
    """a copied system asks its first questions (systemd-firstboot --prompt) on the console and waits"""
    boot(b, lambda r: unit(r, 'lantern-ask.service', '[Unit]\nDescription=Ask the owner of the machine\nDefaultDependencies=no\nAfter=systemd-remount-fs.service\nBefore=sysinit.target systemd-sysusers.service\n[Service]\nType=oneshot\nStandardInput=tty\nStandardOutput=tty\nStandardError=tty\nTTYPath=/dev/console\nExecStart=/bin/systemd-firstboot --prompt-hostname --prompt-timezone --force\n', 'sysinit.target'))


@odd('odd-power-off-at-closing-time', 'userland', general=['unit-fails'], end=['Power down', 'Power-Off', 'reboot: '], linger=2, limit=200)
def _(b):
    """a service of the workshop switches the machine off outside of opening hours"""
    boot(b, lambda r: unit(r, 'lantern-hours.service', '[Unit]\nDescription=Opening hours of the workshop\nBefore=systemd-user-sessions.service\n[Service]\nType=oneshot\nStandardOutput=journal+console\nExecStart=/bin/sh -c "echo closed until ten, good night; systemctl poweroff; sleep 60"\n'))
