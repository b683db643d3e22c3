#!/usr/bin/env python3
"""Reads message texts out of unpacked packages.

One row of the table is `program <tab> file <tab> text`. A text is one line as the program would print it, with the
changing parts left in as printf conversions. Shell variables and unknown macros stand as %s, so that every reader of
the table knows one notation only; a literal per cent sign in them stands as %%.

Three readers, chosen by what a file is:

* C and its relatives: string literals, neighbours joined, macros between them resolved where the same file (or the
  short list below) says what they are, and %s otherwise;
* shell scripts and unit files: the words of each command, descriptions of units;
* binaries: runs of printable characters in the data sections of ELF files, and in whole files of other formats, as
  ASCII or UTF-8 and, for firmware programs, as UTF-16.
"""

import argparse
import os
import re
import stat
import struct
import sys
from concurrent.futures import ProcessPoolExecutor

# --- C ---------------------------------------------------------------------------------------------------------------

# Comments, character constants and strings. The constant is kept short: an apostrophe in a comment of an assembler file
# or in an #error line must not swallow the text up to the next one.
TOKEN = re.compile(r'//[^\n]*|/\*.*?\*/|\'(?:\\[^\n\']{1,8}|[^\'\\\n])\'|"((?:\\.|[^"\\\n])*)"', re.S)
COMMENT = re.compile(r'//[^\n]*|/\*.*?\*/', re.S)
DEFINE = re.compile(r'^[ \t]*#[ \t]*define[ \t]+(\w+)[ \t]+(?:L?"((?:\\.|[^"\\\n])*)")[ \t]*(?://.*|/\*.*)?$', re.M)
DIRECTIVE = re.compile(r'^[ \t]*#[ \t]*(?:include|error|warning|pragma|line)\b[^\n]*$', re.M)
# What may stand between two literals that the compiler joins: macros, one of them perhaps with an argument.
BETWEEN = re.compile(r'^\s*(?:[A-Za-z_]\w*\b(?:\([^()"]*\))?\s*)*$')
WORD_BEFORE = re.compile(r'(define\s+)?\b([A-Za-z_]\w*)\s*$')
WORD_AFTER = re.compile(r'\s*([A-Z_][A-Z0-9_]{2,})\b(?!\s*\()')
NO_MACRO = {'return', 'case', 'else', 'in', 'L', 'u', 'U', 'u8', 'R', 'extern', 'asm', 'goto', 'sizeof', 'define', 'if'}

# Macros that whole projects share. Everything else is looked up in its own file.
SHARED = {
    'KERN_EMERG': '', 'KERN_ALERT': '', 'KERN_CRIT': '', 'KERN_ERR': '', 'KERN_WARNING': '', 'KERN_NOTICE': '',
    'KERN_INFO': '', 'KERN_DEBUG': '', 'KERN_DEFAULT': '', 'KERN_CONT': '', 'KERN_SOH': '', '_': '', 'N_': '', 'L': '',
    'FW_BUG': '[Firmware Bug]: ', 'FW_WARN': '[Firmware Warn]: ', 'FW_INFO': '[Firmware Info]: ',
    'HW_ERR': '[Hardware Error]: ', 'DEPRECATED': '[Deprecated]: ', 'DRM_NAME': 'drm',
}
ESCAPE = re.compile(r'\\(x[0-9a-fA-F]{1,2}|[0-7]{1,3}|\n|.)', re.S)
SIMPLE = {'n': '\n', 't': '\t', 'r': '\n', 'a': '', 'b': '', 'f': '\n', 'v': '\n', 'e': '\x1b', '0': '', '\n': ''}


def unescape(text):
    if '\\' not in text:
        return text

    def one(m):
        e = m.group(1)
        if e in SIMPLE:
            return SIMPLE[e]
        if e[0] == 'x' and len(e) > 1:
            return chr(int(e[1:], 16))
        if e[0].isdigit():
            return chr(int(e, 8) & 255)
        return e

    return ESCAPE.sub(one, text)


def macro(name, local):
    if name in SHARED:
        return SHARED[name]
    if name in local:
        return local[name]
    return '%s'


# Where a function of the kernel begins. Its name stands in traces and, as %ps or __func__, in messages.
FUNCTION = re.compile(r'^(?:[A-Za-z_][\w \t*]*[ \t*])?([a-z_]\w*_\w*)\([^;]*$', re.M)


def c_texts(source):
    """Yields the texts of one C file; literals that the compiler joins are joined."""
    if '"' not in source:
        return
    local = {name: unescape(value) for name, value in DEFINE.findall(source)}
    source = DIRECTIVE.sub('', source)
    parts, end = None, 0

    def finish():
        text = ''.join(parts)
        after = WORD_AFTER.match(source, end)
        if after and after.group(1) in local:
            text += local[after.group(1)]
        return text

    for m in TOKEN.finditer(source):
        literal = m.group(1)
        if literal is None:
            continue
        if parts is not None:
            between = source[end:m.start()]
            if len(between) < 400:
                if '/' in between:
                    between = COMMENT.sub(' ', between)
                between = between.replace('\\\n', ' ')
                if BETWEEN.match(between):
                    for name in re.findall(r'([A-Za-z_]\w*)(?:\([^()"]*\))?', between):
                        parts.append(macro(name, local))
                    parts.append(unescape(literal))
                    end = m.end()
                    continue
            yield finish()
        parts, end = [], m.end()
        before = WORD_BEFORE.search(source, max(0, m.start() - 48), m.start())
        if before and not before.group(1) and before.group(2) not in NO_MACRO and before.group(2) in local:
            parts.append(local[before.group(2)])
        parts.append(unescape(literal))
    if parts is not None:
        yield finish()


# --- shell -----------------------------------------------------------------------------------------------------------

HEREDOC = re.compile(r'<<-?\s*(\\?)([\'"]?)([A-Za-z_]\w*)\2')
VARIABLE = re.compile(r'\$(?:[A-Za-z_]\w*|[0-9@*#?!$-])')


def closing(s, i, opened, closed):
    """The place after the bracket that closes the one before i."""
    depth, n = 1, len(s)
    while i < n:
        c = s[i]
        if c == '\\':
            i += 2
            continue
        if c == "'" and opened == '(':
            j = s.find("'", i + 1)
            i = n if j < 0 else j + 1
            continue
        if c == opened:
            depth += 1
        elif c == closed:
            depth -= 1
            if depth == 0:
                return i + 1
        i += 1
    return n


def expansion(s, i):
    """(place after the expansion at i, text) or (i, None) when the dollar sign stands for itself."""
    if s.startswith('${', i):
        return closing(s, i + 2, '{', '}'), '%s'
    if s.startswith('$((', i) or s.startswith('$(', i):
        return closing(s, i + 2, '(', ')'), '%s'
    m = VARIABLE.match(s, i)
    if m:
        return m.end(), '%s'
    return i, None


def shell_commands(s):
    """Yields the words of each simple command; nested substitutions are read as commands of their own."""
    i, n = 0, len(s)
    words, word, quoted, nested, here = [], [], False, [], []

    def end_word():
        nonlocal word, quoted
        if word or quoted:
            words.append(''.join(word))
        word, quoted = [], False

    while i < n:
        c = s[i]
        if c == '\\':
            if s.startswith('\\\n', i):
                pass
            elif i + 1 < n:
                word.append(s[i + 1])
            i += 2
        elif c == "'":
            j = s.find("'", i + 1)
            j = n if j < 0 else j
            word.append(s[i + 1:j])
            quoted = True
            i = j + 1
        elif c == '"':
            quoted = True
            i += 1
            while i < n and s[i] != '"':
                c = s[i]
                if c == '\\' and i + 1 < n:
                    if s[i + 1] != '\n':
                        word.append(s[i + 1] if s[i + 1] in '"\\$`' else s[i:i + 2])
                    i += 2
                elif c == '$':
                    j, text = expansion(s, i)
                    if text is None:
                        word.append(c)
                        i += 1
                    else:
                        nested.append(s[i + 2:j - 1])
                        word.append(text)
                        i = j
                elif c == '`':
                    j = s.find('`', i + 1)
                    j = n if j < 0 else j
                    nested.append(s[i + 1:j])
                    word.append('%s')
                    i = j + 1
                else:
                    word.append(c)
                    i += 1
            i += 1
        elif c == '$':
            j, text = expansion(s, i)
            if text is None:
                word.append(c)
                i += 1
            else:
                if s.startswith('$(', i):
                    nested.append(s[i + 2:j - 1])
                word.append(text)
                i = j
        elif c == '`':
            j = s.find('`', i + 1)
            j = n if j < 0 else j
            nested.append(s[i + 1:j])
            word.append('%s')
            i = j + 1
        elif c == '#' and not word and not quoted:
            j = s.find('\n', i)
            i = n if j < 0 else j
        elif c == '<' and s.startswith('<<', i) and HEREDOC.match(s, i):
            m = HEREDOC.match(s, i)
            here.append((m.group(3), bool(m.group(1) or m.group(2))))
            i = m.end()
        elif c in ' \t':
            end_word()
            i += 1
        elif c in '\n;&|()<>':
            end_word()
            if words:
                yield words
            words = []
            i += 1
            if c == '\n':
                for mark, plain in here:
                    body = []
                    while i < n:
                        j = s.find('\n', i)
                        j = n if j < 0 else j
                        row = s[i:j]
                        i = j + 1
                        if row.strip() == mark:
                            break
                        body.append(row)
                    text = '\n'.join(body)
                    if not plain:
                        text = re.sub(r'\$\{[^{}]*\}|\$\([^()]*\)|`[^`]*`', '%s', text)
                        text = VARIABLE.sub('%s', text)
                    yield ['cat', text]
                here = []
        else:
            word.append(c)
            i += 1
    end_word()
    if words:
        yield words
    for inner in nested:
        if ' ' in inner and inner != s:
            yield from shell_commands(inner)


# Commands whose words are a message as a whole. What else is quoted and holds a blank is taken word by word.
SPEAKERS = re.compile(
    r'^(?:echo|printf|[a-z_]*(?:log|msg|message|warn|warning|error|err|info|panic|die|fail|success|begin|progress)\w*|'
    r'e(?:begin|end|info|warn|error|echo)\w*|emergency_shell|action_shell|plymouth|logger|gettext\w*|say|ask\w*|'
    r'\$?_?print\w*|cat|wecho|rescue_\w+)$')
ASSIGNMENT = re.compile(r'^[A-Za-z_]\w*\+?=')


# A message in a script that another script writes, and the level that the kernel's log takes in front.
WRITTEN = re.compile(r'^(?:warn|info|die|echo|panic|rescue_shell)\s+\S')
LEVEL = re.compile(r'^<\d{1,2}>')


def shell_texts(source):
    for text in shell_words(source):
        yield text
        if LEVEL.match(text):
            yield LEVEL.sub('', text)
        at = text.find('warn "')
        if WRITTEN.match(text) or at >= 0:
            for words in shell_commands(text if at < 0 else text[at:]):
                yield ' '.join(words[1:])


def shell_words(source):
    for words in shell_commands(source):
        while words and (words[0] in ('if', 'then', 'else', 'elif', 'while', 'until', 'do', '!', '{', 'time', 'exec',
                                      'command', 'local', 'export', 'readonly', 'return', 'case')):
            words = words[1:]
        if not words:
            continue
        name = os.path.basename(words[0])
        if SPEAKERS.match(name):
            rest = [w for w in words[1:] if not re.match(r'^-[a-zA-Z]{1,2}$', w)]
            if rest:
                yield unescape(' '.join(rest))
            for w in rest:
                if ' ' in w.strip():
                    yield unescape(w)
        else:
            for w in words:
                w = ASSIGNMENT.sub('', w)
                if ' ' in w.strip():
                    yield unescape(w)


# --- unit files, installer templates, firmware string files -----------------------------------------------------------

def unit_texts(source):
    for m in re.finditer(r'^(?:Description|ExecStart\w*|ConditionPath\w*)=(.*)$', source, re.M):
        if m.group(0).startswith('Description='):
            yield re.sub(r'%[a-zA-Z]', '%s', m.group(1))


def catalog_texts(source):
    for line in source.splitlines():
        if not line.startswith('#'):
            yield re.sub(r'@[A-Z_]+@', '%s', line)


def template_texts(source):
    for m in re.finditer(r'^_?_?(?:Description|Choices): *(.*(?:\n .*)*)', source, re.M):
        for line in m.group(1).split('\n'):
            yield re.sub(r'\$\{[^}]*\}', '%s', line)
        yield re.sub(r'\$\{[^}]*\}', '%s', ' '.join(m.group(1).split()))


def quoted_texts(source):
    """Perl, Python and the like: what stands in quotes on one line."""
    for m in re.finditer(r'"((?:\\.|[^"\\\n])*)"|\'((?:\\.|[^\'\\\n])*)\'', source):
        text = m.group(1) if m.group(1) is not None else m.group(2)
        text = unescape(text)
        yield re.sub(r'\$\{?\w+\}?(?:->)?(?:\{\w+\})?|\{[\w.!:]*\}', '%s', text)


# --- binaries --------------------------------------------------------------------------------------------------------

# Printable ASCII, well-formed two- and three-byte UTF-8 (quotation marks, ellipses), and the tab.
RUN = re.compile(rb'(?:[\x20-\x7e\t]|[\xc2-\xdf][\x80-\xbf]|\xe2[\x80-\xbf]{2}){4,}')
RUN_SHORT = re.compile(rb'[\x20-\x7e]{4,}')
WIDE = re.compile(rb'(?:[\x20-\x7e\t]\x00){6,}')


def elf_data(data):
    """The parts of an ELF file that hold data and no code; the whole file when it has no section table."""
    try:
        wide = data[4] == 2
        if data[5] != 1:
            return [data]
        if wide:
            shoff, = struct.unpack_from('<Q', data, 40)
            shentsize, shnum = struct.unpack_from('<HH', data, 58)
            form, pick = '<IIQQQQ', (1, 2, 4, 5)
        else:
            shoff, = struct.unpack_from('<I', data, 32)
            shentsize, shnum = struct.unpack_from('<HH', data, 46)
            form, pick = '<IIIIII', (1, 2, 4, 5)
        if not shoff or not shnum:
            return [data]
        found = []
        for k in range(shnum):
            fields = struct.unpack_from(form, data, shoff + k * shentsize)
            kind, flags, offset, size = (fields[p] for p in pick)
            if kind == 1 and flags & 2 and not flags & 4:
                found.append(data[offset:offset + size])
        return found or [data]
    except (struct.error, IndexError):
        return [data]


ABBREVIATION = re.compile(r'@([A-Za-z])')


def fsck_texts(texts):
    """The checker of ext file systems abbreviates its texts; the list of abbreviations stands among its strings."""
    short = {}
    if 'aextended attribute' in texts and 'zzero-length' in texts:
        first, last = texts.index('aextended attribute'), texts.index('zzero-length')
        short = {t[0]: t[1:] for t in texts[first:last + 1] if t[0].isalpha()}
        short |= {t[0]: t[1:] for t in texts if t.startswith('Cconflicts with')}
    if not short:
        return
    for text in texts:
        if '@' in text:
            for _ in range(3):
                text = ABBREVIATION.sub(lambda m: short.get(m.group(1), '%s'), text)
            # its own conversions: %i, %b and the like take any value
            yield text[:1].upper() + re.sub(r'%[A-Za-z][a-z]?', '%s', text[1:])


def binary_texts(data, firmware, short):
    pieces = elf_data(data) if data[:4] == b'\x7fELF' else [data]
    for piece in pieces:
        for m in (RUN_SHORT if short else RUN).finditer(piece):
            text = m.group().decode('utf-8', 'replace')
            yield text
            if text.startswith('MESSAGE='):  # a field of the journal
                yield text[8:]
            elif text.startswith('Description='):  # of a unit that a generator writes
                yield re.sub('%%?[a-zA-Z]', '%s', text[12:])
        if firmware:
            for m in WIDE.finditer(piece):
                yield m.group().decode('utf-16-le')


# --- which reader for which file --------------------------------------------------------------------------------------

C_NAMES = ('.c', '.h', '.S', '.s', '.cpp', '.cc', '.hpp', '.inc', '.asm', '.nasm', '.rs', '.y', '.l', '.tbl', '.aslc')
SKIP_NAMES = ('.png', '.svg', '.jpg', '.gz', '.xz', '.mo', '.gmo', '.po', '.pot', '.html', '.css', '.ttf', '.pf2', '.json',
              '.hwdb', '.pcap', '.bz2', '.zst', '.md', '.rst', '.asl', '.dtsi', '.dts', '.pdf', '.pyc', '.typelib', '.gir')
KERNEL_SKIP = ('/drivers/gpu/drm/amd/include/', '/drivers/gpu/drm/nouveau/include/nvif/', '/tools/', '/scripts/')
EXTRA_FILES = ('.service', '.target', '.mount', '.automount', '.socket', '.path', '.timer', '.slice', '.swap', '.device')


def texts_of(path):
    """The texts of one file, unfiltered."""
    name = os.path.basename(path)
    low = name.lower()
    if low.endswith(SKIP_NAMES):
        return
    if low.endswith(C_NAMES):
        with open(path, encoding='utf-8', errors='replace') as f:
            source = f.read()
        yield from c_texts(source)
        if low.endswith(('.asm', '.nasm', '.inc')):  # assembler texts stand in single quotes
            yield from quoted_texts(source)
        if low.endswith('.c') and '/linux-source-' in path:
            for m in FUNCTION.finditer(source):
                yield m.group(1) + '()'
        return
    if name == 'Makefile':  # modules are named here
        with open(path, encoding='utf-8', errors='replace') as f:
            for m in re.finditer(r'\b([\w-]+)\.o\b', f.read()):
                yield m.group(1).replace('-', '_') + '.ko'
        return
    with open(path, 'rb') as f:
        data = f.read(64 * 1024 * 1024)
    if not data:
        return
    firmware = low.endswith('.efi') or data[:2] == b'MZ'
    if b'\0' in data[:4096] or data[:4] == b'\x7fELF' or firmware or low.endswith(('.img', '.bin', '.mod', '.c32')):
        found = list(binary_texts(data, firmware, len(data) <= 65536 and low.endswith(('.img', '.bin', '.0'))))
        yield from found
        yield from fsck_texts(found)
        return
    source = data.decode('utf-8', 'replace')
    if low.endswith(EXTRA_FILES) or low.endswith('.in') and '[Unit]' in source:
        yield from unit_texts(source)
    elif low.endswith('.catalog'):
        yield from catalog_texts(source)
    elif low.endswith('.templates') or '\nTemplate: ' in source[:400]:
        yield from template_texts(source)
    elif low.endswith(('.uni', '.vfr')):  # with marks for bold and the like
        for text in c_texts(source):
            yield re.sub('%[NHEBVO]', '', text)
    elif re.match(r'#!.*\b(?:perl|python\d?|awk)\b', source) or low.endswith(('.py', '.pl', '.pm', '.awk', '.js')):
        yield from quoted_texts(source)
    elif looks_like_shell(path, source):
        yield from shell_texts(source)


def looks_like_shell(path, source):
    first = source.split('\n', 1)[0]
    if first.startswith('#!'):
        return 'sh' in first or 'openrc' in first
    if path.endswith(('.sh', '.postinst', '.prerm', '.config')):
        return True
    place = ('initramfs-tools', 'dracut', '/lib/live/', '/rc', '/lib/lsb/', '/etc/', '/lib/init/', '/usr/share/debootstrap',
             '/lib/cryptsetup', '/usr/lib/', '/lib/', '-source/')
    return any(p in path for p in place) and re.search(r'^\s*(?:echo|if \[|[a-z_]+\(\)\s*\{|\. /)', source, re.M) is not None


# --- rows -------------------------------------------------------------------------------------------------------------

LETTERS = re.compile(r'[A-Za-z]{2,}')
CONTROL = re.compile(r'\x1b\[[0-9;:?]*[A-Za-z]|[\x00-\x08\x0b-\x1f\x7f]')


def lines_of(text):
    """A message of several lines is several texts; each must hold two letters to recognise it by."""
    for line in text.split('\n'):
        if len(line) > 1000:
            continue
        line = CONTROL.sub('', line)
        line = re.sub(r'[ \t\xa0]+', ' ', line)
        if LETTERS.search(line):
            yield line


def scan(job):
    """The rows of one batch of files, as one string."""
    program, cache, files = job
    rows = []
    for path in files:
        shown = os.path.relpath(path, os.path.join(cache, program))
        seen = set()
        try:
            for text in texts_of(path):
                for line in lines_of(text):
                    if line not in seen:
                        seen.add(line)
                        rows.append(f'{program}\t{shown}\t{line}\n')
        except OSError as problem:
            print(f'texts: {path}: {problem}', file=sys.stderr)
    return ''.join(rows)


def files_of(folder, kernel):
    for top, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(names):
            path = os.path.join(top, name)
            try:
                mode = os.lstat(path)
            except OSError:
                continue
            if not stat.S_ISREG(mode.st_mode):
                continue
            if kernel:
                if not (name.endswith(('.c', '.h', '.S')) or name == 'Makefile') or any(p in path for p in KERNEL_SKIP):
                    continue
                if name.endswith('.h') and mode.st_size > 400_000:  # register tables
                    continue
            yield path


def jobs(cache, packages):
    with open(packages, encoding='utf-8') as f:
        for row in f:
            words = row.split('#')[0].split()
            if not words:
                continue
            program = words[1] + ('-source' if words[0] == 'source' else '')
            folder = os.path.join(cache, program)
            if not os.path.isdir(folder):
                continue
            batch = []
            for path in files_of(folder, words[0] == 'kernel'):
                batch.append(path)
                if len(batch) == 400:
                    yield program, cache, batch
                    batch = []
            if batch:
                yield program, cache, batch


def main():
    options = argparse.ArgumentParser(description=__doc__.split('\n')[0])
    options.add_argument('--cache', required=True)
    options.add_argument('--packages', required=True)
    options.add_argument('--out', required=True)
    options.add_argument('--jobs', type=int, default=2)
    chosen = options.parse_args()
    rows = 0
    unfinished = chosen.out + '.part'
    with open(unfinished, 'w', encoding='utf-8', errors='replace') as table:
        with ProcessPoolExecutor(chosen.jobs) as pool:
            for found in pool.map(scan, jobs(chosen.cache, chosen.packages)):
                table.write(found)
                rows += found.count('\n')
    os.replace(unfinished, chosen.out)
    print(f'texts: {rows} texts in {chosen.out}', file=sys.stderr)


if __name__ == '__main__':
    main()
