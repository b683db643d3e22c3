"""Faults as people paste them: the journal, printed by hand in the emergency shell or by the running system."""
from bench import ROOT, TTY, scene, sh_text
from scenes.healthy import exported
from scenes.userland import OTHER, fstab, unit

EM = ['emergency-mode-entered', 'unit-fails']


def by_hand(name, label, command, general=EM, **more):
    """The journal printed in the emergency shell after the root password was typed."""
    def register(make):
        def whole(b):
            b.second = True
            b.type('or press Control-D to continue', 'lantern\r', 2)
            b.type('# ', f'{command} > /dev/ttyS1; sleep 2; echo EXPORT-"ENDED"\r', 2)
            make(b)
        whole.__doc__ = f'{make.__doc__}; {command} typed in the emergency shell, to a second serial line'
        return scene(name, label, 'userland', general=general, end=['EXPORT-ENDED'], limit=260, quiet=100, **more)(whole)
    return register


@by_hand('journal-fstab-disk-gone', 'mount-unit-device-missing', 'journalctl -b -o short-monotonic --no-pager', general=EM + ['job-waits-forever'])
def _(b):
    """fstab names a disk that is gone, timeout of 20 seconds"""
    b.disk(b.root(fstab(f'UUID={OTHER} /srv/parts ext4 defaults,x-systemd.device-timeout=20 0 2')))
    b.direct(f'{ROOT} ro {TTY}')


@by_hand('journal-explained-type-wrong', 'mount-unit-fails', 'journalctl -xb --no-pager')
def _(b):
    """fstab says xfs for a data disk that is ext4, on AHCI"""
    b.disk(b.root(fstab('/dev/sdb /srv/parts xfs defaults 0 0')), bus='ahci')
    b.disk(b.small_root(), bus='ahci')
    b.direct(f'{ROOT} ro quiet {TTY}')


@by_hand('journal-json-needs-fsck', 'fsck-wants-a-person', 'journalctl -b -o json --no-pager')
def _(b):
    """a data disk in fstab has errors that fsck does not repair unasked"""
    data = b.small_root(lambda t: [(t / 'var' / f'd{i}').mkdir() for i in range(30)])
    sh_text(f"for d in /var /tmp /run; do debugfs -w -R \"clri $d\" {data}; done 2>/dev/null; debugfs -w -R 'ssv state 2' {data} 2>/dev/null")
    b.disk(b.root(fstab('/dev/vdb /srv/parts ext4 defaults 0 2')))
    b.disk(data)
    b.direct(f'{ROOT} ro {TTY}')


def circle(r):
    unit(r, 'lantern-a.service', '[Unit]\nDescription=First lamp\nAfter=lantern-b.service\nRequires=lantern-b.service\n[Service]\nType=oneshot\nExecStart=/bin/true\n')
    unit(r, 'lantern-b.service', '[Unit]\nDescription=Second lamp\nAfter=lantern-a.service\n[Service]\nType=oneshot\nExecStart=/bin/true\n')


def crash(r):
    unit(r, 'lantern-lamp.service', '[Unit]\nDescription=Light in the window\n[Service]\nRestart=on-failure\nExecStart=/bin/sh -c "kill -SEGV $$$$"\n')


exported('journal-iso-units-in-a-circle', 'two units, each ordered after the other; journalctl -b -o short-iso to a second serial line',
         'journalctl -b -o short-iso --no-pager', circle, label='ordering-cycle', general=['unit-fails', 'job-waits-forever'])
exported('journal-swap-gone', 'fstab names swap space that is gone, timeout of 20 seconds; journalctl -b to a second serial line',
         'journalctl -b --no-pager', fstab(f'UUID={OTHER} none swap sw,x-systemd.device-timeout=20 0 0'), label='swap-unit-missing', general=['job-waits-forever', 'unit-fails'])
exported('journal-service-crashes', 'a service ends with SIGSEGV at each start; journalctl -b -o short-precise to a second serial line',
         'journalctl -b -o short-precise --no-pager', crash, label='service-crashes', general=['unit-fails'])

exported('healthy-dmesg-human', 'Debian 12; dmesg -T (dates in place of seconds) printed inside to a second serial line', 'dmesg -T')
exported('healthy-dmesg-decoded', 'Debian 12; dmesg -x (facility and level in front) printed inside to a second serial line', 'dmesg -x')
exported('healthy-dmesg-raw', 'Debian 12; dmesg -r (raw priorities) printed inside to a second serial line', 'dmesg -r')
exported('healthy-journal-export', 'Debian 12; journalctl -b -o export printed inside to a second serial line', 'journalctl -b -o export --no-pager')
exported('healthy-journal-kernel-only', 'Debian 12; journalctl -k -b -o short-full printed inside to a second serial line', 'journalctl -k -b -o short-full --no-pager')
exported('healthy-journal-cat', 'Debian 12; journalctl -b -o cat (messages alone) printed inside to a second serial line', 'journalctl -b -o cat --no-pager')
