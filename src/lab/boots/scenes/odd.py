"""Causes that are deliberately not in the base: the right answer is "unlisted"."""
from bench import HERE, LAB, ROOT, TTY, scene, sh, sh_text


def odd(name, stage, general=(), end=('no such text',), **more):
    return scene(name, 'unlisted', stage, general=general, end=end, **{'limit': 150, 'quiet': 45, **more})


def hook(t, where, name, text):
    f = t / 'scripts' / where / name
    f.parent.mkdir(parents=True, exist_ok=True)
    f.write_text('#!/bin/sh\n[ "$1" = prereqs ] && exit 0\n' + text)
    f.chmod(0o755)
    o = f.parent / 'ORDER'
    o.write_text((o.read_text() if o.exists() else '') + f'/scripts/{where}/{name} "$@"\n[ -e /conf/param.conf ] && . /conf/param.conf\n')


@odd('odd-key-switch-in-initramfs', 'root')
def _(b):
    """a hook of the workshop in the initramfs waits for a key switch"""
    b.disk()
    b.direct(f'{ROOT} ro {TTY}', initrd=b.initrd(lambda t: hook(
        t, 'init-premount', 'keyswitch', 'echo "keyswitch: bench 4 is switched off at the panel"\necho "keyswitch: turn the key to position II"\nwhile :; do sleep 100; done\n')))


@odd('odd-stock-check-in-initramfs', 'root', general=['initramfs-ends-in-shell'], end=[r'\(initramfs\) '])
def _(b):
    """a hook of the workshop in the initramfs refuses a machine without an inventory tag and opens a shell"""
    b.disk(bus='nvme')
    b.direct(f'{ROOT} ro {TTY}', initrd=b.initrd(lambda t: hook(
        t, 'local-premount', 'inventory', '. /scripts/functions\necho "inventory: no tag in slot A, this machine must not leave the shelf"\npanic "inventory: ask the person at the desk"\n')))


@odd('odd-loader-reserved', 'loader', quiet=20, general=['loader-stops-at-prompt'])
def _(b):
    """grub.cfg was replaced by a notice that waits for ever"""
    def edit(r):
        (r / 'boot/grub/grub.cfg').write_text('echo "This machine is reserved for the Thursday repair class."\necho "Ask at the desk for the yellow card."\nsleep 100000\n')
    b.uefi()
    b.disk(b.root(edit))


@odd('odd-init-quiz', 'userland', general=['userland-stops-silently'], end=['lamps> '], linger=5)
def _(b):
    """init= names a script of the workshop that asks a question and waits"""
    def edit(r):
        f = r / 'usr/local/sbin/quiz'
        f.write_text('#!/bin/sh\necho "Good evening. How many lamps hang over the bench?"\nprintf "lamps> "\nwhile read -r a; do printf "No. lamps> "; done\nsleep 100000\n')
        f.chmod(0o755)
    b.disk(b.root(edit), bus='ahci')
    b.direct(f'{ROOT} ro quiet init=/usr/local/sbin/quiz {TTY}')


@odd('odd-boots-the-loader-again', 'loader', general=['firmware-restarts-over-and-over'], limit=45, quiet=20)
def _(b):
    """grub.cfg of a half-finished installer says reboot, so the machine starts over and over"""
    def edit(r):
        (r / 'boot/grub/grub.cfg').write_text('echo "stage 2 of 3: handing over"\nsleep 1\nreboot\n')
    b.uefi()
    b.disk(b.root(edit))


@odd('odd-shell-script-of-firmware', 'firmware', general=['firmware-ends-without-handing-over'], quiet=30)
def _(b):
    """the firmware's shell runs a startup.nsh of the workshop that waits for a key"""
    def edit(e):
        (e / 'EFI/BOOT/BOOTX64.EFI').unlink()
        (e / 'startup.nsh').write_text('@echo -off\r\necho Lantern Street flashing bench, slot 2\r\necho Put the programmer on header J7 and press a key\r\npause\r\n')
    b.uefi()
    b.disk(b.esp(edit))


@odd('odd-sysv-script-waits', 'userland', general=['userland-stops-silently'], quiet=45)
def _(b):
    """sysvinit, a start script of the workshop waits for a label printer that is gone"""
    d = b.dir / 'v.img'
    sh('cp', '--sparse=always', LAB / 'base12v.img', d)

    def edit(r):
        f = r / 'etc/init.d/bootmisc.sh'
        own = ('if [ "$1" = start ]; then\n  echo "labelprinter: tray empty or printer off, polling"\n'
               '  while :; do sleep 5; echo "labelprinter: no answer on channel 3"; sleep 60; done\nfi\n')
        head, rest = f.read_text().split('### END INIT INFO\n', 1)
        f.write_text(head + '### END INIT INFO\n' + own + rest)
    b.mounted(d, 0, edit)
    b.disk(d)
    b.direct(f'root=/dev/vda ro {TTY}')


@odd('odd-module-stops-machine', 'root', general=['kernel-panics'], end=['end Kernel panic'])
def _(b):
    """a kernel module of the workshop stops the machine with a text of its own (enclosure guard)"""
    from scenes.kernel import card
    b.disk()
    b.direct(f'{ROOT} ro {TTY}', initrd=b.initrd(card('guard')))
