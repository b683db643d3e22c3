"""Faults after the init of the installed system has started."""
import shutil
from bench import LAB, LOGIN, MIB, NAMES, ROOT, TTY, scene, sh, sh_text

EMERGENCY = [r'or press Control-D to continue\)', r'Press Enter to continue', r'root account is locked', r'Press Enter for maintenance']
PANIC = [r'end Kernel panic']
OTHER = '66666666-bbbb-4bbb-8bbb-363636363636'
SYSTEM = 'etc/systemd/system'


def us(name, label, general=(), also=(), end=EMERGENCY, stage='userland', limit=200, **more):
    return scene(name, label, stage, general=general, also=also, end=end, limit=limit, **{'quiet': 80, **more})


def boot(b, edit, bus='virtio', append='', tree=12):
    if tree == 12:
        b.disk(b.root(edit), bus=bus)
        b.direct(f'{ROOT} ro {append} {TTY}')
    else:
        b.disk(b.root(edit, 'base13.img'), bus=bus)
        b.direct(f'{ROOT} ro {append} {TTY}', 'kernel13', 'initrd13')


def fstab(line):
    def edit(r):
        f = r / 'etc/fstab'
        f.write_text(f.read_text() + line + '\n')
    return edit


def unit(r, name, text, wanted='multi-user.target'):
    (r / SYSTEM / name).write_text(text)
    d = r / SYSTEM / f'{wanted}.wants'
    d.mkdir(exist_ok=True)
    (d / name).symlink_to(f'/{SYSTEM}/{name}')


# --- init itself --------------------------------------------------------------------------------------------------


@us('init-file-gone', 'init-missing', general=['initramfs-ends-in-shell'], also=['root-is-wrong-partition'], stage='root', end=[r'\(initramfs\) '])
def _(b):
    """/sbin/init and its usual substitutes were deleted"""
    def edit(r):
        for n in ('usr/sbin/init', 'usr/lib/systemd/systemd', 'usr/bin/sh', 'usr/bin/init', 'usr/lib/init'):
            p = r / n
            if p.is_symlink() or p.is_file():
                p.unlink()
    boot(b, edit)


@us('init-of-other-machine', 'init-not-runnable', general=['init-exits', 'kernel-panics'], end=PANIC, stage='root')
def _(b):
    """/sbin/init is a program for RISC-V"""
    def edit(r):
        p = r / 'usr/sbin/init'
        p.unlink()
        shutil.copy('/usr/share/qemu/opensbi-riscv64-generic-fw_dynamic.elf', p)
        p.chmod(0o755)
    boot(b, edit)


@us('init-library-gone', 'init-library-missing', general=['init-exits', 'kernel-panics'], end=PANIC)
def _(b):
    """the shared library of systemd was deleted"""
    def edit(r):
        for f in (r / 'usr/lib/x86_64-linux-gnu/systemd').glob('libsystemd-*.so'):
            f.unlink()
    boot(b, edit)


@us('init-crashes-at-once', 'init-killed-by-signal', general=['init-exits', 'kernel-panics'], end=PANIC)
def _(b):
    """/sbin/init writes to address zero (a C program made for this)"""
    def edit(r):
        c = b.dir / 'i.c'
        c.write_text('int main(void) { volatile int *p = 0; *p = 1; return 0; }\n')
        (r / 'usr/sbin/init').unlink()
        sh('gcc', '-O0', '-static', '-o', r / 'usr/sbin/init', c)
    boot(b, edit, bus='ahci')


@us('init-argument-names-true', 'kernel-argument-breaks-boot', general=['init-exits', 'kernel-panics'], also=['init-exits'], end=PANIC)
def _(b):
    """init=/bin/true on the command line: a program that ends at once"""
    b.disk()
    b.direct(f'{ROOT} ro init=/bin/true {TTY}')


@us('systemd-crashes', 'systemd-freezes', end=[r'Freezing execution'], linger=4)
def _(b):
    """a unit sends SIGSEGV to process 1, systemd stops itself"""
    boot(b, lambda r: unit(r, 'lantern-poke.service', '[Unit]\nDescription=Poke\n[Service]\nType=oneshot\nExecStart=/bin/kill -SEGV 1\n'))


@us('cgroup-v1-refused', 'cgroup-hierarchy-refused', end=[r'Freezing execution', LOGIN, 'reezing'], linger=4)
def _(b):
    """Debian 13 (systemd 257) with systemd.unified_cgroup_hierarchy=0"""
    b.disk('base13.img')
    b.direct(f'{ROOT} ro systemd.unified_cgroup_hierarchy=0 {TTY}', 'kernel13', 'initrd13')


@us('machine-id-gone', 'machine-id-missing', end=[r'Freezing', 'reezing', LOGIN, r'System cannot boot'], linger=15)
def _(b):
    """/etc/machine-id was deleted and /etc is mounted read-only"""
    boot(b, lambda r: (r / 'etc/machine-id').unlink(missing_ok=True))


@us('selinux-without-policy', 'selinux-policy-fails', end=[r'reezing', LOGIN], linger=4)
def _(b):
    """SELinux enforcing on the command line and in its configuration, no policy installed"""
    def edit(r):
        (r / 'etc/selinux').mkdir(exist_ok=True)
        (r / 'etc/selinux/config').write_text('SELINUX=enforcing\nSELINUXTYPE=default\n')
    boot(b, edit, append='security=selinux selinux=1 enforcing=1')


# --- mounts -------------------------------------------------------------------------------------------------------


@us('fstab-disk-gone', 'mount-unit-device-missing', general=['emergency-mode-entered', 'job-waits-forever'])
def _(b):
    """fstab names a disk that is gone, the usual 90 seconds"""
    boot(b, fstab(f'UUID={OTHER} /srv/parts ext4 defaults 0 2'))


@us('fstab-disk-gone-trixie', 'mount-unit-device-missing', general=['emergency-mode-entered', 'job-waits-forever'])
def _(b):
    """Debian 13, fstab names a label that no disk has, device timeout of 20 seconds"""
    boot(b, fstab('LABEL=shelf-two /srv/parts ext4 defaults,x-systemd.device-timeout=20 0 2'), tree=13, bus='nvme')


@us('fstab-type-wrong', 'mount-unit-fails', general=['emergency-mode-entered', 'unit-fails'])
def _(b):
    """fstab says xfs for a data disk that is ext4"""
    data = b.small_root()
    boot(b, fstab('/dev/vdb /srv/parts xfs defaults 0 0'))
    b.disk(data)


@us('fstab-option-wrong-quiet', 'mount-unit-fails', general=['emergency-mode-entered', 'unit-fails'])
def _(b):
    """quiet, fstab has a mount option that ext4 does not know"""
    data = b.small_root()
    boot(b, fstab('/dev/vdb /srv/parts ext4 defaults,noatim 0 0'), append='quiet')
    b.disk(data)


@us('fstab-line-without-fields', 'fstab-syntax-broken', general=['emergency-mode-entered'], also=['mount-unit-fails', 'mount-unit-device-missing'], end=EMERGENCY + [LOGIN])
def _(b):
    """fstab was broken by an editor: the device and the mount point of a line are exchanged, another line has one field"""
    data = b.small_root()
    boot(b, fstab('/srv/parts /dev/vdb ext4 defaults 0 two\nUUID=\n/dev/vdb'))
    b.disk(data)


@us('data-disk-needs-fsck', 'fsck-wants-a-person', general=['emergency-mode-entered', 'unit-fails'])
def _(b):
    """a data disk in fstab has errors that fsck does not repair unasked"""
    data = b.small_root(lambda t: [(t / 'var' / f'd{i}').mkdir() for i in range(30)])
    sh_text(f"for d in /var /tmp /run; do debugfs -w -R \"clri $d\" {data}; done 2>/dev/null; debugfs -w -R 'ssv state 2' {data} 2>/dev/null")
    boot(b, fstab('/dev/vdb /srv/parts ext4 defaults 0 2'))
    b.disk(data)


@us('emergency-root-locked', 'sysroot-mode-or-root-locked', general=['emergency-mode-entered'], also=['mount-unit-device-missing'])
def _(b):
    """fstab names a disk that is gone and the root account is locked: no emergency shell"""
    def edit(r):
        fstab(f'UUID={OTHER} /srv/parts ext4 defaults,x-systemd.device-timeout=15 0 2')(r)
        f = r / 'etc/shadow'
        f.write_text('\n'.join('root:!*:19000:0:99999:7:::' if l.startswith('root:') else l for l in f.read_text().splitlines()) + '\n')
    boot(b, edit)


@us('swap-disk-gone', 'swap-unit-missing', general=['job-waits-forever'], stage='done', end=[LOGIN])
def _(b):
    """fstab names swap space that is gone, timeout of 20 seconds; the boot goes on without it"""
    boot(b, fstab(f'UUID={OTHER} none swap sw,x-systemd.device-timeout=20 0 0'))


@us('root-read-only-by-fstab', 'root-stays-read-only', general=['unit-fails'], stage='done', end=[LOGIN], linger=8)
def _(b):
    """the root line in fstab says ro"""
    def edit(r):
        f = r / 'etc/fstab'
        f.write_text(f.read_text().replace('errors=remount-ro', 'ro'))
        (r / 'var/log/journal').mkdir(exist_ok=True)
    boot(b, edit)


@us('root-disk-full', 'disk-full', general=['unit-fails'], stage='done', end=[LOGIN], linger=8)
def _(b):
    """the root file system is full to the last block, no reserve left"""
    d = b.copy('base12.img')
    sh_text(f"l=$(losetup --show -f -o {66 * MIB} {d}); trap \"losetup -d $l\" EXIT; e2fsck -fy $l >/dev/null 2>&1 || true; tune2fs -m 0 $l >/dev/null")

    def edit(r):
        (r / 'var/log/journal').mkdir(exist_ok=True)
        unit(r, 'lantern-list.service', '[Unit]\nDescription=Write the list of donated machines\nBefore=systemd-user-sessions.service\n[Service]\nType=oneshot\nStandardError=journal+console\nExecStart=/bin/sh -ec "head -c 65536 /dev/zero > /var/tmp/list"\n')
        sh_text(f'dd if=/dev/zero of={r}/var/fill bs=1M status=none 2>/dev/null || true; dd if=/dev/zero of={r}/var/fill2 bs=1k status=none 2>/dev/null || true')
    b.mounted(d, 66, edit)
    b.disk(d)
    b.direct(f'{ROOT} ro {TTY}')


# --- units --------------------------------------------------------------------------------------------------------


@us('unit-never-ends', 'unit-blocks-boot', general=['job-waits-forever'], end=['Scan the shelves \\((?:2|3)\\ds / no limit'], quiet=80, limit=170)
def _(b):
    """a oneshot unit without a time limit never ends and the login waits for it"""
    boot(b, lambda r: unit(r, 'lantern-scan.service', '[Unit]\nDescription=Scan the shelves\nBefore=systemd-user-sessions.service getty@tty1.service serial-getty@ttyS0.service\n[Service]\nType=oneshot\nExecStart=/bin/sleep infinity\n'))


@us('units-in-a-circle', 'ordering-cycle', general=['unit-fails', 'job-waits-forever'], stage='done', end=[LOGIN])
def _(b):
    """two units, each ordered after the other and before basic targets"""
    def edit(r):
        unit(r, 'lantern-a.service', '[Unit]\nDescription=First lamp\nDefaultDependencies=no\nAfter=lantern-b.service\nBefore=sysinit.target\nRequires=lantern-b.service\n[Service]\nType=oneshot\nExecStart=/bin/true\n', 'sysinit.target')
        unit(r, 'lantern-b.service', '[Unit]\nDescription=Second lamp\nAfter=basic.target lantern-a.service\n[Service]\nType=oneshot\nExecStart=/bin/true\n', 'sysinit.target')
    boot(b, edit)


@us('default-target-gone', 'default-target-missing', general=['emergency-mode-entered'], end=EMERGENCY + [LOGIN, 'reezing'], linger=5)
def _(b):
    """default.target points at a unit that does not exist"""
    def edit(r):
        p = r / SYSTEM / 'default.target'
        p.unlink(missing_ok=True)
        p.symlink_to('/lib/systemd/system/workshop.target')
    boot(b, edit)


@us('waits-for-network', 'network-wait-online', general=['job-waits-forever'], end=['Wait for Network [^\\n]*\\((?:3|4)\\ds / no limit'], limit=170, quiet=80)
def _(b):
    """systemd-networkd waits for a network card that gets no address; the login waits for network mounts"""
    def edit(r):
        (r / 'etc/systemd/network').mkdir(exist_ok=True)
        (r / 'etc/systemd/network/lan.network').write_text('[Match]\nName=en*\n[Network]\nDHCP=yes\n')
        for w, u in (('multi-user.target', 'systemd-networkd.service'), ('network-online.target', 'systemd-networkd-wait-online.service')):
            d = r / SYSTEM / f'{w}.wants'
            d.mkdir(exist_ok=True)
            (d / u).symlink_to(f'/lib/systemd/system/{u}')
        fstab('10.0.2.77:/srv /srv/parts nfs defaults,_netdev 0 0')(r)
    b.network = True
    b.args += ['-netdev', 'hubport,id=n0,hubid=7', '-device', 'virtio-net-pci,netdev=n0']
    boot(b, edit)


@us('bus-daemon-gone', 'bus-daemon-fails', general=['unit-fails'], stage='done', end=[LOGIN], linger=12)
def _(b):
    """the program of the message bus was deleted"""
    boot(b, lambda r: (r / 'usr/bin/dbus-daemon').unlink())


@us('login-manager-broken', 'login-service-fails', general=['unit-fails'], stage='done', end=['no such text'], quiet=25, limit=90)
def _(b):
    """systemd-logind ends with an error at each start (not executable)"""
    boot(b, lambda r: (r / 'usr/lib/systemd/systemd-logind').chmod(0o644))


@us('library-of-many-units-gone', 'library-damaged-in-userland', general=['unit-fails'], end=EMERGENCY + [LOGIN], linger=5, limit=150, also=['udev-rules-broken'])
def _(b):
    """libacl, which many services need and systemd itself does not, was deleted"""
    boot(b, lambda r: [f.unlink() for f in (r / 'usr/lib/x86_64-linux-gnu').glob('libacl.so*')])


@us('udev-program-not-runnable', 'udev-rules-broken', general=['unit-fails', 'emergency-mode-entered', 'job-waits-forever'], also=['essential-unit-fails'], limit=180)
def _(b):
    """systemd-udevd cannot be started (not executable); devices of fstab never appear"""
    data = b.small_root()

    def edit(r):
        (r / 'usr/bin/udevadm').chmod(0o644)
        fstab('/dev/vdb /srv/parts ext4 defaults,x-systemd.device-timeout=20 0 0')(r)
    boot(b, edit)
    b.disk(data)


@us('modules-of-running-kernel-gone', 'modules-directory-missing', general=['unit-fails', 'emergency-mode-entered'], also=['interrupted-upgrade'], limit=150)
def _(b):
    """/lib/modules of the running kernel was deleted, fstab needs the vfat module for the ESP"""
    def edit(r):
        v = (LAB / 'kver12').read_text().strip()
        (r / f'usr/lib/modules/{v}').rename(r / 'usr/lib/modules/6.1.0-51-amd64')
        (r / 'etc/modules').write_text('loop\nsg\n')
        (r / 'boot/efi').mkdir(exist_ok=True)
        fstab(f"UUID={NAMES['ESP_ID']} /boot/efi vfat umask=0077 0 1")(r)
    b.disk(b.root(edit))
    b.direct(f'{ROOT} ro {TTY}', initrd=b.initrd(lambda t: [p.unlink() for n in ('vfat', 'fat') for p in (t / 'usr/lib/modules').rglob(f'{n}.ko')]))


@us('essential-unit-fails', 'essential-unit-fails', general=['emergency-mode-entered', 'unit-fails'], limit=120)
def _(b):
    """a unit that local-fs.target requires ends with an error"""
    def edit(r):
        (r / SYSTEM / 'lantern-check.service').write_text('[Unit]\nDescription=Check the shelf disks\nDefaultDependencies=no\nBefore=local-fs.target\nOnFailure=emergency.target\nOnFailureJobMode=replace-irreversibly\n[Service]\nType=oneshot\nExecStart=/bin/sh -c "exit 3"\n')
        d = r / SYSTEM / 'local-fs.target.requires'
        d.mkdir()
        (d / 'lantern-check.service').symlink_to(f'/{SYSTEM}/lantern-check.service')
    boot(b, edit)


@us('serial-line-not-there', 'getty-restarts', general=['job-waits-forever'], stage='done', end=['Dependency failed for(.|\n)*Serial Getty'], limit=160, quiet=100, linger=4)
def _(b):
    """a login is switched on for a serial port that the machine does not have"""
    def edit(r):
        d = r / SYSTEM / 'getty.target.wants'
        d.mkdir(exist_ok=True)
        (d / 'serial-getty@ttyUSB0.service').symlink_to('/lib/systemd/system/serial-getty@.service')
    boot(b, edit)


@us('login-program-fails', 'getty-restarts', general=['unit-fails'], end=[r'repeated too quickly'], linger=6, stage='userland', limit=120, quiet=60)
def _(b):
    """agetty ends at once at every start (wrong option in a drop-in)"""
    def edit(r):
        d = r / SYSTEM / 'serial-getty@.service.d'
        d.mkdir()
        (d / 'own.conf').write_text('[Unit]\nStartLimitIntervalSec=60\n[Service]\nExecStart=\nExecStart=-/sbin/agetty --no-such-option %I\nRestartSec=1\n')
    boot(b, edit)


@us('memory-eaten-by-service', 'userland-out-of-memory', general=['unit-fails'], end=['Out of memory: Killed process(.|\n)*Out of memory: Killed process(.|\n)*Out of memory: Killed'], linger=3, limit=150)
def _(b):
    """a service that takes memory without end on a machine with 300 MB and no swap"""
    b.memory = 300
    boot(b, lambda r: unit(r, 'lantern-cache.service', '[Unit]\nDescription=Read the picture store\nBefore=systemd-user-sessions.service\n[Service]\nType=oneshot\nOOMPolicy=continue\nExecStart=/bin/sh -c "for i in 1 2 3 4 5; do head -c 900M /dev/zero | tail -c 899M | wc -c; done"\n'))


@us('clock-before-build', 'clock-far-in-past', also=['firmware-clock-reset'], stage='done', end=[LOGIN])
def _(b):
    """the real-time clock says 1 January 2000"""
    b.args += ['-rtc', 'base=2000-01-01T00:00:00']
    b.disk()
    b.direct(f'{ROOT} ro {TTY}')


@us('disk-stops-answering', 'hung-task-on-disk', general=['userland-stops-silently', 'job-waits-forever'], end=[r'blocked for more than(.|\n)*blocked for more than'], linger=3, limit=150, quiet=70)
def _(b):
    """the root disk stops answering while services start (throttled to nothing); hung task time set to 20 s"""
    b.tell('Welcome to .*Debian', 'block_set_io_throttle d0 20 0 0 0 0 0', 4)
    b.disk()
    b.direct(f'{ROOT} ro sysctl.kernel.hung_task_timeout_secs=20 {TTY}')


@us('service-crashes-at-start', 'service-crashes', general=['unit-fails'], end=[LOGIN], stage='done', linger=6)
def _(b):
    """systemd-logind replaced by a program that writes to address zero"""
    def edit(r):
        c = b.dir / 'i.c'
        c.write_text('int main(void) { volatile int *p = 0; *p = 1; return 0; }\n')
        sh('gcc', '-O0', '-static', '-o', r / 'usr/lib/systemd/systemd-logind', c)
    boot(b, edit)
