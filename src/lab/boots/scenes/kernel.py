"""Faults in the kernel itself and in its arguments."""
import shutil
from bench import LAB, LOGIN, ROOT, TTY, scene, sh, sh_text

PANIC = [r'end Kernel panic']


def kn(name, label, general=('kernel-panics',), also=(), end=PANIC, stage='kernel', limit=120, **more):
    return scene(name, label, stage, general=general, also=also, end=end, limit=limit, **{'quiet': 40, **more})


@kn('kernel-initramfs-damaged', 'initramfs-corrupt', general=['kernel-panics', 'root-mount-fails'], stage='root')
def _(b):
    """the middle of the initramfs was overwritten"""
    f = b.copy('initrd12', 'broken.img')
    with open(f, 'r+b') as d:
        d.seek(3000000)
        d.write(b'\xa5' * 400000)
    b.disk()
    b.direct(f'{ROOT} ro {TTY}', initrd=f)


@kn('kernel-initramfs-not-an-archive', 'initramfs-corrupt', general=['kernel-panics', 'root-mount-fails'], also=['initramfs-compressor-unsupported'], stage='root')
def _(b):
    """the initramfs file holds noise"""
    f = b.dir / 'noise.img'
    f.write_bytes(b'lantern street\n' * 400000)
    b.disk(bus='ahci')
    b.direct(f'{ROOT} ro {TTY}', initrd=f)


@kn('kernel-without-initramfs', 'initramfs-not-loaded', general=['kernel-panics', 'root-mount-fails'], also=['kernel-lacks-disk-driver', 'initrd-file-missing'], stage='root')
def _(b):
    """the distribution's kernel started without an initramfs, root=UUID="""
    b.disk(bus='nvme')
    b.direct(f'{ROOT} ro {TTY}', initrd=None)


@kn('kernel-without-initramfs-device-name', 'kernel-lacks-disk-driver', general=['kernel-panics', 'root-mount-fails'], also=['initramfs-not-loaded', 'initrd-file-missing', 'root-device-name-changed'], stage='root')
def _(b):
    """a kernel that has the disk's driver only as a module, started without an initramfs, root=/dev/sda3"""
    b.disk('base13.img', bus='ahci')
    b.direct(f'root=/dev/sda3 ro {TTY}', 'kernel13', None)


@kn('kernel-too-little-memory', 'kernel-out-of-memory-at-boot', also=['kernel-argument-breaks-boot'], end=PANIC, quiet=60, stage='root')
def _(b):
    """mem=150M leaves too little room for the initramfs"""
    b.disk()
    b.direct(f'{ROOT} ro mem=150M {TTY}', initrd='initrd12.most')


@kn('kernel-console-to-screen', 'console-sent-elsewhere', general=['kernel-hangs-in-initcall'], end=['no such text'], limit=60, quiet=25, also=['early-console-goes-black'])
def _(b):
    """early messages on the serial line, then the console goes to the screen (earlyprintk=ttyS0 console=tty0)"""
    b.disk()
    b.direct(f'{ROOT} ro earlyprintk=ttyS0 console=tty0')


@kn('kernel-timer-missing', 'timer-not-connected', end=PANIC + ['timer doesn'], linger=4)
def _(b):
    """a machine without PIT and HPET"""
    b.machine = 'q35,pit=off,hpet=off'
    b.cpu = 'qemu64,-kvmclock'
    b.disk()
    b.direct(f'{ROOT} ro {TTY}')


@kn('kernel-old-processor', 'cpu-lacks-feature-level', general=['kernel-never-answers-after-loader'], end=['no such text'], quiet=15, limit=40, stage='loader', also=['early-console-goes-black', 'console-sent-elsewhere'])
def _(b):
    """a kernel for x86-64 on a 32-bit processor, started by legacy grub"""
    b.machine, b.cpu = 'pc', 'qemu32'
    b.disk(bus='ide')


@kn('kernel-old-processor-direct', 'cpu-lacks-feature-level', general=['kernel-never-answers-after-loader'], end=['kernel appropriate'], quiet=15, limit=40, stage='kernel')
def _(b):
    """a kernel for x86-64 on a 32-bit processor, started through its 16-bit entry"""
    b.machine, b.cpu = 'pc', 'qemu32'
    b.disk(bus='ide')
    b.direct(f'{ROOT} ro {TTY}')


@kn('kernel-machine-check-cpu', 'machine-check-cpu', end=PANIC, stage='devices')
def _(b):
    """an uncorrected machine check (internal timer error, bank 0) while drivers start"""
    b.tell('Trying to unpack rootfs|NET: Registered PF_INET6', 'mce 0 0 0xb200000000000400 0x4 0x0 0x0', 0.1)
    b.disk()
    b.direct(f'{ROOT} ro {TTY}')


@kn('kernel-machine-check-memory', 'machine-check-memory', end=PANIC, stage='root', also=['memory-faulty'])
def _(b):
    """an uncorrected machine check (memory controller read error, bank 3) while the initramfs works"""
    b.tell('Run /init', 'mce 0 3 0xbe0000000000009f 0x5 0x12345000 0x86', 0.1)
    b.disk(bus='ahci')
    b.direct(f'{ROOT} ro {TTY}')


@kn('kernel-unknown-nmi', 'nmi-unknown', end=PANIC, stage='root')
def _(b):
    """a non-maskable interrupt of unknown origin; unknown_nmi_panic stops the machine"""
    b.tell('Loading, please wait|Run /init', 'nmi', 0.1)
    b.disk()
    b.direct(f'{ROOT} ro unknown_nmi_panic=1 {TTY}')


# --- a module that fails in a chosen way, loaded by the initramfs ------------------------------------------------


def card(how):
    def edit(t):
        v = (LAB / 'kver12').read_text().strip()
        shutil.copy(LAB / 'mod/lantern_card.ko', t / f'usr/lib/modules/{v}/kernel/lantern_card.ko')
        sh_text(f'depmod -b {t}/usr {v} 2>/dev/null || depmod -b {t} {v}')
        f = t / 'conf/modules'
        f.write_text((f.read_text() if f.exists() else '') + f'lantern_card how={how}\n')
    return edit


def fails(name, label, how, general, append='', stage='root', bus='virtio', **more):
    def make(b):
        b.disk(bus=bus)
        b.direct(f'{ROOT} ro {append} {TTY}', initrd=b.initrd(card(how)))
    make.__doc__ = f'a kernel module made for this ({how}), loaded by the initramfs {append}'.strip()
    kn(name, label, general=general, stage=stage, **more)(make)


fails('module-oops-panics', 'driver-crashes-kernel', 'oops', ['driver-crashes-kernel', 'kernel-panics'], 'oops=panic', bus='ahci', also=['kernel-panics'])
fails('module-bug-panics', 'kernel-bug-hit', 'bug', ['kernel-bug-hit', 'kernel-panics'], 'oops=panic', bus='nvme', also=['kernel-panics'])
fails('module-smashes-stack', 'kernel-stack-corrupted', 'smash', ['kernel-panics'])
fails('module-spins', 'cpu-stuck-soft-lockup', 'spin', ['driver-crashes-kernel'], end=['soft lockup(.|\n)*soft lockup'], limit=150, quiet=70)
fails('module-spins-rcu', 'rcu-stall', 'spin', ['driver-crashes-kernel'], 'nosoftlockup', end=['rcu_.*stall(.|\n)*rcu_.*stall', 'self-detected stall'], limit=150, quiet=70, linger=8)
fails('module-never-returns', 'kernel-hangs-in-initcall', 'sleep', ['kernel-hangs-in-initcall'], 'initcall_debug loglevel=8', also=['device-probe-fails', 'hung-task-on-disk'], end=['no such text'], limit=100, quiet=30)
