"""Boots that reach the login prompt, in many shapes."""
from bench import LOGIN, ROOT, TTY, scene


def good(name, **more):
    return scene(name, 'healthy', 'done', end=[LOGIN], quiet=110, **more)


@good('healthy-direct-virtio')
def _(b):
    """Debian 12 on a virtio disk, kernel started directly, all messages on the serial line"""
    b.disk()
    b.direct(f'{ROOT} ro {TTY}')


@good('healthy-uefi-grub')
def _(b):
    """Debian 12 through UEFI firmware and grub from a virtio disk"""
    b.uefi()
    b.disk()


@good('healthy-bios-grub-ide')
def _(b):
    """Debian 12 on an old machine type (i440fx) with an IDE disk, legacy firmware and grub"""
    b.machine, b.memory = 'pc', 384
    b.disk(bus='ide')


@good('healthy-quiet-ahci')
def _(b):
    """Debian 12 on an AHCI disk with quiet on the command line"""
    b.disk(bus='ahci')
    b.direct(f'{ROOT} ro quiet {TTY}')


@good('healthy-nvme-loglevel5')
def _(b):
    """Debian 12 on an NVMe disk with loglevel=5"""
    b.disk(bus='nvme')
    b.direct(f'{ROOT} ro loglevel=5 {TTY}')


@good('healthy-usb-stick')
def _(b):
    """Debian 12 on a USB stick, named by PARTUUID, with the big initramfs that holds most drivers"""
    from bench import NAMES
    b.disk(bus='usb')
    b.direct(f"root=PARTUUID={NAMES['ROOT_PART']} ro rootwait {TTY}", initrd='initrd12.most')


@good('healthy-debug-noisy')
def _(b):
    """loglevel=8 on a machine with an empty optical drive, an empty card reader, two network cards without a link and a sound chip"""
    b.network = True
    b.disk(bus='ahci')
    b.args += ['-device', 'ide-cd,bus=ahci0.3', '-device', 'sdhci-pci', '-device', 'e1000', '-device', 'e1000e',
               '-device', 'intel-hda', '-device', 'hda-duplex', '-device', 'qemu-xhci', '-device', 'usb-tablet',
               '-device', 'usb-kbd', '-device', 'i6300esb']
    b.direct(f'{ROOT} ro loglevel=8 {TTY}')


@good('healthy-systemd-in-initrd')
def _(b):
    """Debian 13 with dracut (systemd inside the initramfs), started directly from a virtio disk"""
    b.disk('base13.img')
    b.direct(f'{ROOT} ro {TTY}', 'kernel13', 'initrd13')


@good('healthy-systemd-boot')
def _(b):
    """Debian 13 through UEFI firmware and systemd-boot from an NVMe disk"""
    b.uefi()
    b.disk('base13.img', bus='nvme')


@good('healthy-dracut-without-systemd')
def _(b):
    """Debian 13 with a dracut initramfs without systemd, named by label, on a SCSI disk"""
    b.disk('base13.img', bus='scsi')
    b.direct(f'root=LABEL=lantern-root ro rd.info {TTY}', 'kernel13', 'initrd13.nosystemd')


@good('healthy-no-status-lines')
def _(b):
    """Debian 12 with systemd.show_status=0 and loglevel=4"""
    b.disk()
    b.direct(f'{ROOT} ro loglevel=4 systemd.show_status=0 {TTY}')


@good('healthy-failed-unit-nobody-needs')
def _(b):
    """Debian 12 with two units that fail and that nothing depends on"""
    def edit(r):
        for n in ('lantern-lamp', 'lantern-bell'):
            (r / f'etc/systemd/system/{n}.service').write_text(
                f'[Unit]\nDescription=Light on the workshop {n[8:]}\n[Service]\nType=oneshot\nExecStart=/bin/false\n')
            (r / f'etc/systemd/system/multi-user.target.wants/{n}.service').symlink_to(f'/etc/systemd/system/{n}.service')
    b.disk(b.root(edit))
    b.direct(f'{ROOT} ro {TTY}')


@scene('healthy-busybox-init', 'healthy', 'done', end=['~ #|/ #'])
def _(b):
    """A very small system with busybox init on ext4, started without any services"""
    def edit(t):
        import shutil
        from bench import LAB
        shutil.copy(LAB / 'root12/bin/busybox', t / 'bin/busybox')
        for n in 'sh mount init getty echo uname cat sleep hostname'.split():
            (t / 'bin' / n).symlink_to('busybox')
        (t / 'sbin').mkdir()
        (t / 'sbin/init').symlink_to('../bin/busybox')
        (t / 'lib64').mkdir()
        (t / 'lib').mkdir()
        for f in ('lib64/ld-linux-x86-64.so.2',):
            shutil.copy(LAB / 'root12' / f, t / f)
        for f in ('libc.so.6', 'libresolv.so.2'):
            shutil.copy(LAB / 'root12/lib/x86_64-linux-gnu' / f, t / 'lib' / f)
        (t / 'etc/init.d').mkdir()
        s = t / 'etc/init.d/rcS'
        s.write_text('#!/bin/sh\nmount -t proc proc /proc\nmount -o remount,rw /\nhostname lantern-bench\necho "Welcome to the bench"\n')
        s.chmod(0o755)
        (t / 'etc/inittab').write_text('::sysinit:/etc/init.d/rcS\nttyS0::askfirst:-/bin/sh\n')
    b.type('Please press Enter', '\n')
    b.disk(b.small_root(edit), bus='virtio')
    b.direct(f'root=/dev/vda ro {TTY}')


@scene('healthy-sysvinit', 'healthy', 'done', end=[LOGIN])
def _(b):
    """Debian 12 with sysvinit and rc scripts in place of systemd"""
    b.disk('base12v.img')
    b.direct(f'root=/dev/vda ro {TTY}')


EXPORT = '''[Unit]
Description=Copy the log of this boot to the second serial line
After=multi-user.target getty.target
[Service]
Type=oneshot
StandardOutput=null
ExecStart=/bin/sh -c 'sleep 3; %s > /dev/ttyS1; echo EXPORT-ENDED > /dev/ttyS0'
'''


def exported(name, how, command, fault=None, append='', label='healthy', stage='done', **more):
    @scene(name, label, stage, end=['EXPORT-ENDED'], linger=3, **more)
    def make(b):
        def edit(r):
            (r / 'etc/systemd/system/lab-export.service').write_text(EXPORT % command)
            w = r / 'etc/systemd/system/multi-user.target.wants/lab-export.service'
            w.symlink_to('/etc/systemd/system/lab-export.service')
            if fault:
                fault(r)
        b.second = True
        b.disk(b.root(edit))
        b.direct(f'{ROOT} ro {TTY} {append}')
    from bench import SCENES
    SCENES[name].made = how


exported('healthy-dmesg', 'Debian 12; dmesg printed inside the running system to a second serial line', 'dmesg')
exported('healthy-journal-short', 'Debian 12; journalctl -b -o short printed inside to a second serial line', 'journalctl -b -o short --no-pager')
exported('healthy-journal-monotonic', 'Debian 12; journalctl -b -o short-monotonic printed inside to a second serial line', 'journalctl -b -o short-monotonic --no-pager')
exported('healthy-journal-json', 'Debian 12; journalctl -b -o json printed inside to a second serial line', 'journalctl -b -o json --no-pager')
