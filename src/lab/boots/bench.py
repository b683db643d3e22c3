"""One machine, one injected fault, one serial console.

A scene is a function that sets up a Bench; running it starts QEMU, types what the scene says, and keeps the raw bytes
of the serial line until an end condition is met: a text was seen, the line was silent for long, or the time is up.
"""
import gzip
import os
import re
import select
import shutil
import socket
import subprocess
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent
LAB = Path(os.environ.get('LAB', '/tmp/lab-boots'))
OUT = Path(os.environ.get('OUT', HERE.parents[2] / 'kb' / 'boots'))
NAMES = dict(re.findall(r'^([A-Z_]+)=(\S+)', (HERE / 'names.sh').read_text(), re.M))
ROOT = 'root=UUID=' + NAMES['ROOT_UUID']
TTY = 'console=ttyS0'
LOGIN = r'lantern-bench login: '
SLOW = float(os.environ.get('SLOW', 1))  # how much longer than on an idle machine a boot may take
OVMF = Path('/usr/share/OVMF')
MIB = 1 << 20
ICOUNT = os.environ.get('ICOUNT', '2')  # one instruction is 2^n ns of the machine's clock, however busy the host is
SCENES = {}


class Scene:
    def __init__(self, name, label, stage, make, general=(), also=(), end=(), limit=200, quiet=40, linger=2):
        self.name, self.label, self.stage, self.make = name, label, stage, make
        self.general, self.also = list(general), list(also)
        self.end, self.limit, self.quiet, self.linger = [e.encode() for e in end], limit * SLOW, quiet, linger
        if end and end[0] != 'no such text':
            self.quiet = max(quiet, min(quiet * SLOW, 160))
        self.made = ' '.join((make.__doc__ or '').split())
        self.cut, self.source, self.lines = 'whole', None, None


def scene(name, label, stage, **more):
    def register(make):
        if name in SCENES:
            raise SystemExit(f'scene {name} is there twice')
        SCENES[name] = Scene(name, label, stage, make, **more)
        return make
    return register


def last25(name, source, also=()):
    """The last 25 lines of another capture, as from a photograph of the screen; also: what these lines leave open as well."""
    s = Scene(name, None, None, lambda b: None, also=also)
    s.cut, s.source = 'last-25', source
    SCENES[name] = s


def excerpt(name, source, first, count):
    """Lines from the first one that matches, without the kernel's time stamps, as people paste them."""
    s = Scene(name, None, None, lambda b: None)
    s.cut, s.source, s.lines = 'excerpt', source, (first, count)
    SCENES[name] = s


def sh(*command, **more):
    return subprocess.run([str(c) for c in command], check=True, **more)


def sh_text(text):
    return subprocess.run(['bash', '-euo', 'pipefail', '-c', text], check=True)


class Bench:
    def __init__(self, scene):
        self.scene = scene
        self.dir = LAB / 'work' / scene.name
        shutil.rmtree(self.dir, ignore_errors=True)
        self.dir.mkdir(parents=True)
        self.vga = 'none'
        self.machine, self.memory, self.cpu = 'q35', 448, 'qemu64,+ssse3,+sse4.1,+sse4.2,+popcnt,+rdrand'
        self.args, self.drives, self.types, self.monitor = [], [], [], []
        self.network, self.usb, self.second, self.ahci = False, False, False, False

    # --- how it starts -------------------------------------------------------------------------------------------
    def direct(self, append, kernel='kernel12', initrd='initrd12.plain'):
        self.args += ['-kernel', str(self.path(kernel)), '-append', append]
        if initrd:
            self.args += ['-initrd', str(self.path(initrd))]

    def uefi(self, code='OVMF_CODE_4M.fd', vars='OVMF_VARS_4M.fd', smm=False):
        mine = self.dir / 'vars.fd'
        self.vga = 'std'
        shutil.copy(OVMF / vars, mine)
        self.args += ['-drive', f'if=pflash,format=raw,unit=0,readonly=on,file={OVMF / code}',
                      '-drive', f'if=pflash,format=raw,unit=1,file={mine}']
        if smm:
            self.machine = 'q35,smm=on'
            self.args += ['-global', 'driver=cfi.pflash01,property=secure,value=on']

    # --- files ---------------------------------------------------------------------------------------------------
    def path(self, name):
        return name if isinstance(name, Path) else LAB / name

    def copy(self, image, name=None):
        target = self.dir / (name or Path(image).name)
        sh('cp', '--sparse=always', self.path(image), target)
        return target

    def root(self, edit, image='base12.img'):
        """A copy of the disk whose root file system is edited while mounted."""
        disk = self.copy(image)
        self.mounted(disk, 66, edit)
        return disk

    def esp(self, edit, image='base12.img'):
        """A copy of the disk whose ESP is edited as a directory (mtools, since the host may not mount FAT)."""
        disk = self.copy(image)
        self.esp_of(disk, edit)
        return disk

    def esp_of(self, disk, edit):
        tree, fat = self.dir / 'esp.tree', self.dir / 'esp.fat'
        shutil.rmtree(tree, ignore_errors=True)
        tree.mkdir()
        sh_text(f'mcopy -s -Q -n -i {disk}@@1M "::*" {tree}/')
        edit(tree)
        sh_text(f'rm -f {fat}; truncate -s 64M {fat}; mkfs.vfat -F 32 -i {NAMES["ESP_ID"].replace("-", "")} -n LANTERNESP {fat} >/dev/null; '
                f'for f in {tree}/*; do [ ! -e "$f" ] || mcopy -s -Q -i {fat} "$f" ::/; done; dd if={fat} of={disk} bs=1M seek=1 conv=notrunc status=none')

    def mounted(self, disk, offset, edit, size=None):
        at = self.dir / 'mnt'
        at.mkdir(exist_ok=True)
        options = f'loop,offset={offset * MIB}' + (f',sizelimit={size * MIB}' if size else '')
        sh('mount', '-o', options, disk, at)
        try:
            edit(at)
        finally:
            sh('umount', at)

    def small_root(self, edit=None, kind='ext4', size=64, options='', label=None):
        """A small file system of its own, with nothing but a few directories."""
        image = self.dir / f'small-{len(list(self.dir.iterdir()))}.img'
        tree = self.dir / 'tree'
        shutil.rmtree(tree, ignore_errors=True)
        for d in 'bin dev etc proc run sys tmp var'.split():
            (tree / d).mkdir(parents=True)
        if edit:
            edit(tree)
        sh('truncate', '-s', f'{size}M', image)
        if kind == 'ext4':
            sh_text(f"mke2fs -q -t ext4 {options} -d {tree} {image}")
        elif kind == 'btrfs':
            sh_text(f"mkfs.btrfs -q {options} --rootdir {tree} {image}")
        else:
            sh_text(f"mkfs.{kind} -q {options} {image}")
        return image

    def initrd(self, edit, base='initrd12.plain'):
        """A copy of an initramfs with its tree edited."""
        whole = LAB / (base + '.tree')
        if not whole.exists():
            whole.mkdir()
            data = self.path(base).read_bytes()[:6]
            cat = 'zstd -dcq' if data[:4] == b'\x28\xb5\x2f\xfd' else 'gzip -dc' if data[:2] == b'\x1f\x8b' else 'cat'
            sh_text(f'cd {whole} && {cat} {self.path(base)} | cpio -idm --quiet')
        tree, image = self.dir / 'initrd.tree', self.dir / 'initrd.img'
        sh('cp', '-a', whole, tree)
        edit(tree)
        sh_text(f'cd {tree} && find . | cpio -o -H newc -R 0:0 --quiet | zstd -3 -q > {image}')
        shutil.rmtree(tree)
        return image

    # --- parts of the machine ------------------------------------------------------------------------------------
    def disk(self, image='base12.img', bus='virtio', name=None, fmt='raw', extra='', keep=False, file=None, boot=None):
        n = name or f'd{len(self.drives)}'
        self.drives.append(n)
        where = file or f'file={self.path(image)},format={fmt}' + ('' if keep else ',snapshot=on')
        self.args += ['-drive', f'if=none,id={n},{where}']
        more = (f',{extra}' if extra else '') + (f',bootindex={boot}' if boot is not None else '')
        if bus == 'virtio':
            self.args += ['-device', f'virtio-blk-pci,drive={n},id=dev-{n}{more}']
        elif bus == 'ide':
            self.args += ['-device', f'ide-hd,drive={n},id=dev-{n}{more}']
        elif bus == 'ahci':
            if not self.ahci:
                self.ahci = True
                self.args += ['-device', 'ahci,id=ahci0']
            self.args += ['-device', f'ide-hd,drive={n},bus=ahci0.{len(self.drives) - 1},id=dev-{n}{more}']
        elif bus == 'nvme':
            self.args += ['-device', f'nvme,drive={n},serial=LANTERN{len(self.drives):04d},id=dev-{n}{more}']
        elif bus == 'usb':
            self.xhci()
            self.args += ['-device', f'usb-storage,drive={n},bus=xhci.0,id=dev-{n}{more}']
        elif bus == 'sd':
            self.args += ['-device', 'sdhci-pci', '-device', f'sd-card,drive={n}']
        elif bus == 'scsi':
            if not any('virtio-scsi' in a for a in self.args):
                self.args += ['-device', 'virtio-scsi-pci,id=scsi0']
            self.args += ['-device', f'scsi-hd,drive={n},id=dev-{n}{more}']
        elif bus != 'none':
            raise ValueError(bus)
        return n

    def xhci(self):
        if not self.usb:
            self.args += ['-device', 'qemu-xhci,id=xhci']
            self.usb = True

    def type(self, after, text, wait=1.0):
        """Type a text at the serial console after a pattern was seen."""
        self.types.append((after.encode(), text.encode(), wait))

    def tell(self, after, command, wait=0.5):
        """Give the machine monitor a command (unplug a device ...) after a pattern was seen."""
        self.monitor.append((after.encode(), command, wait))

    # --- the run -------------------------------------------------------------------------------------------------
    def command(self):
        c = ['nice', '-n', '-5', 'qemu-system-x86_64', '-accel', 'tcg,tb-size=256', '-machine',
             f'{self.machine},graphics=off', '-cpu', self.cpu, '-smp', '1', '-m', str(self.memory), '-display', 'none',
             '-vga', self.vga, '-no-user-config', '-icount', f'shift={ICOUNT}',
             '-chardev', 'stdio,id=c0,signal=off', '-serial', 'chardev:c0',
             '-monitor', f'unix:{self.dir}/monitor,server,nowait']
        if self.second:
            c += ['-serial', f'file:{self.dir}/second']
        if not self.network:
            c += ['-nic', 'none']
        return c + self.args

    def run(self):
        s = self.scene
        errors = open(self.dir / 'qemu.err', 'wb')
        q = subprocess.Popen(self.command(), stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=errors)
        got, start, heard, seen, why = bytearray(), time.time(), time.time(), None, 'machine ended'
        step, asked, due = 0, 0, []
        at = 0
        try:
            while True:
                now = time.time()
                ready, _, _ = select.select([q.stdout], [], [], 0.25)
                if ready:
                    chunk = os.read(q.stdout.fileno(), 65536)
                    if not chunk:
                        break
                    got += chunk
                    heard = now
                if step < len(self.types):
                    m = re.compile(self.types[step][0]).search(got, at)
                    if m:
                        at = m.end()
                        due.append((now + self.types[step][2], 'type', self.types[step][1]))
                        step += 1
                if asked < len(self.monitor) and re.search(self.monitor[asked][0], got):
                    due.append((now + self.monitor[asked][2], 'tell', self.monitor[asked][1]))
                    asked += 1
                for item in [d for d in due if d[0] <= now]:
                    due.remove(item)
                    heard = now
                    if item[1] == 'type':
                        for k in item[2]:
                            q.stdin.write(bytes([k]))
                            q.stdin.flush()
                            time.sleep(0.03)
                    else:
                        self.ask(item[2])
                waiting = due or step < len(self.types) and s.end
                if seen is None and not due and step >= len(self.types) and any(re.search(e, got[at:]) for e in s.end):
                    seen, why = now, 'end text seen'
                if seen is not None and now - seen > s.linger:
                    break
                if now - heard > (s.quiet if len(got) > 40 else 150) and not due:  # the firmware needs a while to speak
                    why = f'silent for {s.quiet} s'
                    break
                if now - start > s.limit:
                    why = f'{s.limit} s are over'
                    break
        finally:
            if q.poll() is None:
                q.terminate()
                try:
                    q.wait(10)
                except subprocess.TimeoutExpired:
                    q.kill()
            errors.close()
        if self.second:
            got = bytearray((self.dir / 'second').read_bytes())
        return bytes(got), why, time.time() - start

    def ask(self, command):
        c = socket.socket(socket.AF_UNIX)
        c.connect(f'{self.dir}/monitor')
        time.sleep(0.2)
        c.sendall(command.encode() + b'\n')
        time.sleep(0.3)
        c.close()


def keep(scene, data):
    """Write the capture and its label."""
    OUT.mkdir(parents=True, exist_ok=True)
    for old in (OUT / f'{scene.name}.log', OUT / f'{scene.name}.log.gz'):
        old.unlink(missing_ok=True)
    name = f'{scene.name}.log'
    if len(data) > 20000:
        name += '.gz'
        (OUT / name).write_bytes(gzip.compress(data, 9, mtime=0))
    else:
        (OUT / name).write_bytes(data)
    made = scene.made.replace("'", "''")
    (OUT / f'{scene.name}.yaml').write_text(
        f"log: {name}\nlabel: {scene.label}\nalso: [{', '.join(scene.also)}]\ngeneral: [{', '.join(scene.general)}]\n"
        f"stage: {scene.stage}\ncut: {scene.cut}\n"
        f"made: '{made} (src/lab/boots/lab run {scene.name})'\nlicence: CC0-1.0\n")


def read(name):
    plain = OUT / f'{name}.log'
    return plain.read_bytes() if plain.exists() else gzip.decompress((OUT / f'{name}.log.gz').read_bytes())


STAMP = re.compile(rb'^\[\s*\d+\.\d{6}\]\s?')


def derive(s):
    of = SCENES[s.source]
    s.label, s.stage, s.general, s.also = of.label, of.stage, of.general, of.also + s.also
    lines = re.findall(rb'[^\n]*\n|[^\n]+', read(s.source))
    if s.cut == 'last-25':
        data = b''.join(lines[-25:])
        s.made = f'the last 25 lines of {s.source}, as tail -n 25 gives them'
    else:
        first, count = s.lines
        at = next(i for i, l in enumerate(lines) if re.search(first.encode(), l))
        data = b''.join(STAMP.sub(b'', l) for l in lines[at:at + count])
        s.made = f'{count} lines out of {s.source} without time stamps'
    keep(s, data)


def run(name):
    s = SCENES[name]
    if s.source:
        derive(s)
        return f'{name}: cut from {s.source}'
    b = Bench(s)
    s.make(b)
    data, why, took = b.run()
    if b"IO-APIC + timer doesn't work" in data and s.label != 'timer-not-connected':
        data, why, took = b.run()  # a busy host makes the emulated timer miss the kernel's test
    if len(data) < 40:
        return f'{name}: NOTHING CAPTURED, see {b.dir}/qemu.err'
    keep(s, data)
    for big in list(b.dir.glob('*.img')) + list(b.dir.glob('*.fd')):
        big.unlink()
    return f'{name}: {len(data)} bytes, {why}, {took:.0f} s'
