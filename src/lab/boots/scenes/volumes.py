"""Volumes whose descriptions of themselves do not agree, and the space for hibernation."""
from bench import ROOT, LOGIN, TTY, sh_text
from scenes.root import VOLUME, md_conf, rt


def newer(image, by):
    """Raise the event counter in a RAID 1.2 superblock, with its sum put right."""
    with open(image, 'r+b') as f:
        f.seek(4096)
        sb = bytearray(f.read(4096))
        sb[200:208] = (int.from_bytes(sb[200:208], 'little') + by).to_bytes(8, 'little')
        sb[216:220] = bytes(4)
        size = 256 + 2 * int.from_bytes(sb[220:224], 'little')
        total = sum(int.from_bytes(sb[i:i + 4], 'little') for i in range(0, size - size % 4, 4))
        total += int.from_bytes(sb[size - size % 4:size], 'little')
        sb[216:220] = ((total & 0xffffffff) + (total >> 32) & 0xffffffff).to_bytes(4, 'little')
        f.seek(4096)
        f.write(sb)


@rt('raid-members-disagree', 'raid-superblock-mismatch', general=VOLUME, limit=200)
def _(b):
    """root on RAID 5 over three disks, two members are older than the first (their event counters are behind)"""
    for n, by in (('r5a', 200), ('r5b', 100), ('r5c', 0)):
        f = b.copy(f'store/{n}.img')
        newer(f, by)
        b.disk(f)
    b.direct(f'root=/dev/md0 ro rootdelay=6 {TTY}', initrd=b.initrd(md_conf))


@rt('hibernation-image-of-other-system', 'resume-image-refused', general=[], stage='done', end=[LOGIN], limit=220, quiet=80)
def _(b):
    """the swap space holds the header of a hibernation image that no kernel wrote; the boot goes on without it"""
    f = b.dir / 'swap.img'
    sh_text(f'truncate -s 64M {f}; mkswap -q {f} >/dev/null')
    with open(f, 'r+b') as d:
        d.seek(4064)
        d.write((1).to_bytes(8, 'little') + bytes(4) + b'SWAPSPACE2' + b'S1SUSPEND\0')
        d.write((2).to_bytes(8, 'little'))
    b.disk()
    b.disk(f)

    def edit(t):
        (t / 'conf/conf.d').mkdir(exist_ok=True)
        (t / 'conf/conf.d/resume').write_text('RESUME=/dev/vdb\n')
    b.direct(f'{ROOT} ro resume=/dev/vdb {TTY}', initrd=b.initrd(edit))
