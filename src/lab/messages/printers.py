#!/usr/bin/env python3
"""Asks of every sign in the base: which program prints this?

    printers.py BASE TEXTS [--published DIR] [--all] [--report FILE]
    printers.py --self-test TEXTS

BASE is the folder of YAML files, TEXTS the table that `fetch` writes. The answer for a sign is the program and file
whose text it is, or "nobody prints this". The exit code is 1 when a sign of a fault or of a false trail has no printer
and does not say why (`printed-by`), or when it says why and has a printer after all. Lines of families are reported in
the same way but never fail, because that format has no place for a reason.

Entries of a family whose texts are published as a list of their own (`DIR/<family>.tsv.gz`, columns file, call, text) are
judged by that list alone; where it is not there, they are not judged, and the result says so. TEXTS may be `-`: then only
those families are judged.

How a `seen` text is judged. The letters that need a printer are

* those that the sign's expression spells out, and
* those of the rest of the line that no group captures and that are not values (a token with a digit, a slash or an
  underscore is a value: a device, a path, an identifier, a function's name).

A message text covers letters with its literal pieces when these stand in the line in order, whole words at its ends, and
with something fitting between them for each conversion (digits for %d, anything for %s). All letters of the first kind
must be covered and, of both kinds together, 60 in 100. Up to three texts may do it together, because one line is often
composed: a text inside a conversion of another one, or neighbours from the same file, or a prefix that ends in a colon
or bracket. What the system's printing functions put in front ("nvme nvme0: ", "systemd[1]: ", "[FAILED] ") is taken off
when the name in it is known.
"""

import argparse
import gzip
import os
import re
import sys
import tempfile
import time
from collections import Counter, defaultdict
from multiprocessing import get_context

import yaml

try:
    from re import _constants as op, _parser as expressions
except ImportError:  # before Python 3.11
    import sre_constants as op
    import sre_parse as expressions

ENOUGH = 0.6
MOST_TEXTS = 3
WORD = re.compile(r'[A-Za-z]{2,}')
SPEAKER = re.compile(r'([\w.@/+-]+): ?')
IDENTIFIER = re.compile(r'\b[A-Za-z_]\w*_\w+\b')


# --- the sign's own expression -----------------------------------------------------------------------------------------

CLASSES = {'alpha': 'A-Za-z', 'digit': '0-9', 'alnum': 'A-Za-z0-9', 'upper': 'A-Z', 'lower': 'a-z', 'space': r'\s',
           'punct': r'!-/:-@\[-`{-~', 'xdigit': '0-9A-Fa-f', 'word': r'\w', 'blank': r' \t', 'print': ' -~', 'graph': '!-~'}


def to_python(line):
    """RE2 notation to that of Python, where they differ."""
    line = re.sub(r'\\Q(.*?)(?:\\E|$)', lambda m: re.escape(m.group(1)), line)
    line = re.sub(r'\(\?<([A-Za-z]\w*)>', r'(?P<\1>', line)
    line = re.sub(r'\[:(\w+):\]', lambda m: CLASSES[m.group(1)], line)
    line = re.sub(r'\\x\{([0-9a-fA-F]+)\}', lambda m: '\\U%08x' % int(m.group(1), 16), line)
    line = re.sub(r'\\p\{?(?:L[ul]?)\}?', 'A-Za-z' if False else r'[A-Za-z]', line)
    return line.replace(r'\z', r'\Z').replace(r'\C', '.')


class Expression:
    """A sign's expression, rebuilt so that each run of literal characters stands in a group of its own."""

    AT = {op.AT_BEGINNING: '^', op.AT_BEGINNING_STRING: r'\A', op.AT_END: '$', op.AT_END_STRING: r'\Z',
          op.AT_BOUNDARY: r'\b', op.AT_NON_BOUNDARY: r'\B'}
    CATEGORY = {op.CATEGORY_DIGIT: r'\d', op.CATEGORY_NOT_DIGIT: r'\D', op.CATEGORY_SPACE: r'\s',
                op.CATEGORY_NOT_SPACE: r'\S', op.CATEGORY_WORD: r'\w', op.CATEGORY_NOT_WORD: r'\W'}

    def __init__(self, line):
        self.runs = self.groups = 0
        tree = expressions.parse(to_python(line))
        flags = tree.state.flags & (re.I | re.S | re.M)
        self.pattern = re.compile(self.sequence(tree), flags | re.A)

    def sequence(self, items):
        built, run = [], []

        def flush():
            if run:
                self.runs += 1
                built.append(f'(?P<run{self.runs}>' + ''.join(map(re.escape, run)) + ')')
                run.clear()

        for kind, value in items:
            if kind is op.LITERAL:
                run.append(chr(value))
            else:
                flush()
                built.append(self.item(kind, value))
        flush()
        return ''.join(built)

    def item(self, kind, value):
        if kind is op.ANY:
            return '.'
        if kind is op.NOT_LITERAL:
            return '[^' + re.escape(chr(value)) + ']'
        if kind is op.IN:
            return self.members(value)
        if kind is op.AT:
            return self.AT[value]
        if kind is op.BRANCH:
            return '(?:' + '|'.join(self.sequence(b) for b in value[1]) + ')'
        if kind is op.SUBPATTERN:
            number, add, _, inner = value
            inner = self.sequence(inner)
            if number is None:
                return ('(?i:' if add & re.I else '(?:') + inner + ')'
            self.groups += 1
            return f'(?P<captured{self.groups}>{inner})'
        if kind in (op.MAX_REPEAT, op.MIN_REPEAT):
            low, high, inner = value
            high = '' if high is op.MAXREPEAT else high
            return '(?:' + self.sequence(inner) + f'){{{low},{high}}}' + ('?' if kind is op.MIN_REPEAT else '')
        raise ValueError(f'unexpected {kind} in an expression')

    def members(self, value):
        built = ''
        for kind, item in value:
            if kind is op.NEGATE:
                built = '^' + built
            elif kind is op.LITERAL:
                built += re.escape(chr(item))
            elif kind is op.RANGE:
                built += re.escape(chr(item[0])) + '-' + re.escape(chr(item[1]))
            else:
                built += self.CATEGORY[item]
        return f'[{built}]'

    def places(self, text):
        """(places that the expression spells out, places that its groups capture) or None when it does not match."""
        m = self.pattern.search(text)
        if not m:
            return None
        spelt, captured = set(), set()
        for name, (start, end) in ((n, m.span(n)) for n in m.groupdict()):
            (spelt if name.startswith('run') else captured).update(range(start, end))
        return spelt, captured - spelt


# --- message texts -----------------------------------------------------------------------------------------------------

CONVERSION = re.compile(r'%(?:\d+\$)?[-+ #0\']*(?:\*|\d+)?(?:\.(?:\*|\d+)?)?(?:hh|h|ll|l|L|q|j|z|t|Z)?'
                        r'(p[A-Za-z0-9]*|[diouxXeEfFgGaAcsnmrDCS%])')
NUMBER = r' ?[-+]?[\d,]+'
HEX = r' ?(?:0[xX])?[0-9a-fA-F]+'
ANYTHING = r'.*?'


def gap_for(conversion):
    if conversion in ('d', 'i', 'u'):
        return NUMBER
    if conversion in ('x', 'X', 'o', 'p', 'px', 'pK'):
        return HEX
    if conversion in ('e', 'E', 'f', 'F', 'g', 'G'):
        return r' ?[-+]?[\d.,eE+-]+'
    if conversion == 'c':
        return '.'
    return ANYTHING


SOURCES = ('.c', '.h', '.S', '.sh')
UNIT_FILES = ('.service', '.target', '.mount', '.automount', '.socket', '.path', '.timer', '.slice', '.swap')


def family_of(program, file):
    """Programs that may share a line. Descriptions of units and the C library's error texts go with everything."""
    if program == 'libc6' or file.endswith(UNIT_FILES):
        return '*'
    for stem in ('systemd', 'libsystemd', 'udev', 'libudev'):
        if program.startswith(stem):
            return 'systemd'
    return re.split('[-0-9.]', program[3:] if program.startswith('lib') else program)[0]


class Text:
    """One message text: literal pieces with gaps between them, as in `pieces[0] gaps[0] pieces[1] ...`."""

    __slots__ = ('program', 'file', 'raw', 'source', 'family', 'bare', 'prefix', 'place', 'pieces', 'gaps', 'words', 'head', 'cut_only',
                 '_pattern')

    def __init__(self, program, file, raw):
        self.program, self.file, self.raw = program, file, raw
        self.source = file.endswith(SOURCES)
        self.place = os.path.dirname(file) if self.source else program + '/' + file
        self.family = family_of(program, file)
        self.pieces, self.gaps = [''], []
        last = 0
        for m in CONVERSION.finditer(raw):
            self.pieces[-1] += raw[last:m.start()]
            last = m.end()
            if m.group(1) == '%':
                self.pieces[-1] += '%'
            elif self.gaps and not self.pieces[-1]:
                self.gaps[-1] = ANYTHING  # two conversions in a row are one gap
            else:
                self.gaps.append(gap_for(m.group(1)))
                self.pieces.append('')
        self.pieces[-1] += raw[last:]
        self.pieces[0] = self.pieces[0].lstrip()
        self.pieces[-1] = self.pieces[-1].rstrip()
        self.words = []
        for k, piece in enumerate(self.pieces):
            for m in WORD.finditer(piece):
                if (m.start() > 0 or k == 0) and (m.end() < len(piece) or k == len(self.pieces) - 1):
                    self.words.append(m.group())
        self.head = self.words[:5]
        self.bare = not self.gaps and len(self.words) < 2
        self.prefix = raw.rstrip().endswith((':', ']')) or '): ' in raw or bool(SPEAKER.match(raw))
        self.cut_only = False
        self._pattern = None

    def pattern(self):
        if self._pattern is None:
            built = []
            for k, piece in enumerate(self.pieces):
                built.append('(' + re.escape(piece) + ')')
                if k < len(self.gaps):
                    built.append('(' + self.gaps[k] + ')')
            body = ''.join(built)
            if self.pieces[0]:
                before = r'(?<![A-Za-z])' if self.pieces[0][0].isalpha() else ''
            else:
                before = '^' if self.gaps and self.gaps[0] == ANYTHING else ''
            if self.pieces[-1]:
                after = r'(?![A-Za-z])' if self.pieces[-1][-1].isalpha() else ''
            else:
                after = '$' if self.gaps and self.gaps[-1] == ANYTHING else ''
            self._pattern = re.compile(before + body + after)
        return self._pattern


class Cover:
    """A message text laid upon a line. Places are bits, so that sets of them cost nothing."""

    __slots__ = ('text', 'places', 'gaps', 'start', 'end', 'gain', 'named')

    def __init__(self, text, pieces, gaps, shift):
        self.text = text
        self.places = bits(pieces) << shift
        self.gaps = [(start + shift, end + shift) for start, end in gaps]
        for one, other in zip(self.gaps, self.gaps[1:]):
            if other[0] - one[1] == 1:  # "%s %s" may as well hold two words of one text
                self.gaps = self.gaps + [(one[0], other[1])]
        self.start = min([s for s, e in pieces if e > s], default=0) + shift
        self.end = max([e for s, e in pieces if e > s], default=0) + shift
        self.gain = self.named = 0

    def inside(self, other):
        """Stands in a gap of the other one: at one of its ends, or as one of its own file's words."""
        for start, end in other.gaps:
            if start <= self.start and self.end <= end:
                return (self.start - start <= 2 or end - self.end <= 2 or 2 * (self.end - self.start) >= end - start or
                        self.text.source and self.text.file == other.text.file)
        return False

    def joins(self, other, line):
        """Whether both may stand in one line: nested, or neighbours with a reason to be."""
        a, b = self.text, other.text
        if a.family != b.family and '*' not in (a.family, b.family):
            return False
        nested = self.inside(other) or other.inside(self)
        if nested:
            return True
        first, second = (self, other) if self.start <= other.start else (other, self)
        if first.end > second.start:
            return False
        if a.source and b.source and a.program == b.program and near(a.place, b.place):
            return True
        if second.text.family == '*' and line[:second.start].endswith(': '):
            return True
        return line[first.start:first.end].rstrip().endswith((':', ']', ' -')) or line[second.start:second.end][:1] in ':(,'

    def anchored(self, chosen):
        """A single word stands in thousands of texts: it must come from where another text of the line comes from."""
        t = self.text
        return len(t.words) > 1 or t.prefix or any(
            o is not self and (near(o.text.place, t.place) or '*' in (o.text.family, t.family) and
                               (self.inside(o) or o.inside(self))) for o in chosen)


def near(one, other):
    """The same directory of sources, or one inside the other."""
    return one == other or (one + '/').startswith(other + '/') or (other + '/').startswith(one + '/')


def bits(spans):
    found = 0
    for start, end in spans:
        found |= (1 << end) - (1 << start)
    return found


def lay(text, line, shift=0):
    """The text upon the line, or None. The line begins `shift` places before."""
    m = text.pattern().search(line)
    if m:
        spans = [m.span(k + 1) for k in range(len(text.pieces) + len(text.gaps))]
        return Cover(text, spans[0::2], spans[1::2], shift)
    return None


def lay_cut(text, line, shift=0):
    """The text upon the end of a line that is shorter than the text."""
    built = '' if not text.pieces[0] or not text.pieces[0][0].isalpha() else r'(?<![A-Za-z])'
    pieces = []
    for k, piece in enumerate(text.pieces):
        m = re.search(built + '(.+)$', line)
        while m:
            tail = m.group(k * 2 + 1)
            if len(tail) <= len(piece):
                break
            m = re.compile(built + '(.+)$').search(line, m.start() + 1)
        if m and piece.startswith(m.group(k * 2 + 1)) and len(m.group(k * 2 + 1)) >= 3:
            spans = [m.span(j + 1) for j in range(k * 2 + 1)]
            return Cover(text, spans[0::2], spans[1::2], shift)
        if k < len(text.gaps):
            built += '(' + re.escape(piece) + ')(' + text.gaps[k] + ')'
            if sum(map(len, text.pieces[:k + 1])) >= 24:
                m = re.search(built + '$', line)  # the line ends within a changing part
                if m:
                    spans = [m.span(j + 1) for j in range(k * 2 + 2)]
                    return Cover(text, spans[0::2], spans[1::2], shift)
    return None


class Texts:
    """All message texts that could matter for the given lines, found by their rarest word."""

    def __init__(self, table, lines):
        wanted = {w for line in lines for w in WORD.findall(line)}
        identifiers = {w for line in lines for w in IDENTIFIER.findall(line)}
        self.functions = {}
        self.names = set()  # single words that a text may be about
        self.own = set()  # the same with their family, of binaries and scripts
        self.speakers = set()  # names that may stand in front of a message, with a colon
        self.rows = 0
        kept = []
        everything = '\n'.join(lines)
        self.glued = []  # texts without a whole word of their own, such as "%sconsole [%s%d] "
        last = None
        for program, file, raw in read_table(table):
            self.rows += 1
            if raw.endswith('()') and ' ' not in raw:
                if raw[:-2] in identifiers:
                    self.functions[raw[:-2]] = f'{program} {file}: {raw}'
                continue
            if ' ' not in raw and len(raw) < 40:
                self.names.add(raw.strip('.:%[] '))
                if not file.endswith(SOURCES):
                    self.own.add((family_of(program, file), raw.strip('.:%[] ')))
                if raw.endswith('.ko'):
                    self.speakers.add(raw[:-3])
                    continue
            m = SPEAKER.match(raw)
            if m:
                self.speakers.add(m.group(1))
            if file != last:
                last = file
                base = os.path.basename(file)
                stem = base.rsplit('.', 1)[0]
                self.speakers.update((base, stem, stem.replace('-', '_')))
            if '%' not in raw:
                found = WORD.findall(raw)
                if not found or not wanted.issuperset(found[:3]):
                    continue
            text = Text(program, file, raw)
            if raw.startswith('%s') and raw[2:3].isalpha():
                # what stands first may be the kernel's level of importance, which is no part of the line
                short = Text(program, file, raw[2:])
                if short.words and wanted.issuperset(short.words):
                    kept.append(short)
            if not text.words:
                longest = max(text.pieces, key=len).strip()
                if len(longest) >= 6 and longest in everything:
                    self.glued.append((longest, text))
                continue
            if not wanted.issuperset(text.words):
                if len(text.words) > 5 and wanted.issuperset(text.head) and len(' '.join(text.head)) >= 16:
                    text.cut_only = True
                else:
                    continue
            kept.append(text)
        self.kept = len(kept)
        self.names |= self.speakers
        count = Counter(w for t in kept for w in set(t.words))
        self.index = defaultdict(list)
        for text in kept:
            self.index[min(text.head if text.cut_only else text.words, key=count.__getitem__)].append(text)
            if not text.cut_only and len(text.words) > 5:
                # a line may also end before the text does; then only the beginning need be there
                head = min(text.head, key=count.__getitem__)
                if head != min(text.words, key=count.__getitem__):
                    self.index[head].append(text)

    def upon(self, line, shift=0):
        """Every text that can be laid upon the line from the place `shift` on."""
        line = line[shift:]
        words = set(WORD.findall(line))
        seen, covers = set(), []
        for longest, text in self.glued:
            if longest in line:
                cover = lay(text, line, shift)
                if cover:
                    covers.append(cover)
        for word in words:
            for text in self.index.get(word, ()):
                if id(text) in seen:
                    continue
                seen.add(id(text))
                if not text.cut_only and words.issuperset(text.words):
                    cover = lay(text, line, shift)
                    if cover:
                        covers.append(cover)
                        continue
                if len(text.words) > 5 and words.issuperset(text.head):
                    cover = lay_cut(text, line, shift)
                    if cover:
                        covers.append(cover)
        return covers


def read_table(table):
    with open(table, encoding='utf-8') as rows:
        for row in rows:
            yield row.rstrip('\n').split('\t', 2)


# --- judging one line --------------------------------------------------------------------------------------------------

COLOUR = re.compile(r'\x1b\[[0-9;:?]*[A-Za-z]')
STATUS = re.compile(r'\[ *(?:OK|FAILED|DEPEND|WARN|INFO|TIME|SKIP|\*[* ]*) *\] +')
TAG = re.compile(r'([\w.@/+-]+?)(?:\[\d+\])?: ')
DEVICE = re.compile(r'([\w.-]+) (\S*\d\S*): ')
MODULE = re.compile(r'(?:\w+\(\S+:\w+\):|PAM) ')  # of the authentication library
DISPLAY = re.compile(r'\((?:EE|WW|II|NI|!!|\?\?|--|\*\*|==)\) (?:\w+\(\w+\): )?')
DRM = re.compile(r'\[drm(?::\w+(?: \[\w+\])?)?\] (?:\*ERROR\* )?')
# A value; a name that was shortened to the width of a terminal; a tag of a file system; a resource as the kernel's %pR writes it; a disk's name without a number; a path of
# firmware devices.
UNIT = r'\S+\.(?:service|target|mount|automount|socket|path|timer|slice|scope|swap|device)'
VALUE = re.compile(UNIT + r'\b|="[^"]*"|\w[\w@.-]*(?:…|\.\.\.)\S+[^()]*|[A-Za-z0-9_/.@+\\-]*[0-9_/\\][A-Za-z0-9_/.@+\\-]*|\b(?:PART)?(?:UUID|LABEL)=\S+|'
                   r'\[(?:mem|io|bus|irq|dma) [^\]]*\]|\b(?:[shv]|xv)d[a-z]\b|\w+\([^() ]*\)/\S+')
CAPITALS = re.compile(r'\b[A-Z]{3,}\b')
QUOTED = re.compile(r'"[^"]*"|\'[^\' ][^\']*\'|`[^\']+\'|<[^<>]*>')


class Verdict:
    def __init__(self, line, covers=(), share=0.0, missing='', functions=(), alone=False):
        self.line, self.share, self.missing = line, share, missing
        self.alone = alone  # one text that says something does it all
        self.by = [f'{c.text.program} {c.text.file}: {c.text.raw.strip()}' for c in covers] + list(functions)

    @property
    def printed(self):
        return bool(self.by) and self.share >= ENOUGH and not self.missing

    def printers(self):
        return '  +  '.join(self.by)


class Judge:
    def __init__(self, texts):
        self.texts = texts

    def free(self, line):
        """Length of what the printing functions put in front of a message."""
        at = 0
        for _ in range(3):
            for form in (STATUS, DRM, DISPLAY, MODULE, DEVICE, TAG):
                m = form.match(line, at)
                if not m:
                    continue
                if form is DEVICE or form is TAG:
                    name = m.group(1)
                    bare = re.sub(r'[\d.:-]+$', '', os.path.basename(name))
                    known = self.texts.names if form is DEVICE else self.texts.speakers
                    if not (re.search(r'\d', name) or re.fullmatch(UNIT, name) or name in known or bare in known):
                        continue
                at = m.end()
                break
            else:
                break
        return at

    def judge(self, seen, expression):
        places = expression.places(seen)
        if places is None:
            return Verdict(seen, missing='(the expression does not match)')
        spelt, captured = places
        # blanks are squeezed as in the table; where each place of the squeezed line stood is kept
        line, origin, k = [], [], 0
        shown = COLOUR.sub(lambda m: '\0' * len(m.group()), seen)
        for k, c in enumerate(shown):
            if c == '\0' or c in ' \t' and (not line or line[-1] == ' '):
                continue
            line.append(' ' if c == '\t' else c)
            origin.append(k)
        line = ''.join(line)
        origin_of = [(1 << p, origin[p]) for p in range(len(line))]
        spelt = sum(bit for bit, k in origin_of if k in spelt)
        captured = sum(bit for bit, k in origin_of if k in captured)
        letters = bits(m.span() for m in WORD.finditer(line)) & ~bits(m.span() for m in VALUE.finditer(line))
        at = line.find('ommand line: ')
        if at >= 0:  # what people write there is no message
            letters &= (1 << at + 13) - 1
        # words in capitals only are flags or names, unless the sign spells them out
        letters &= ~bits(m.span() for m in CAPITALS.finditer(line)) | spelt
        quoted = bits(m.span() for m in QUOTED.finditer(line))
        free = self.free(line)
        about_prefix = free and not letters >> free << free & spelt
        letters = letters >> free << free
        must = letters & spelt
        need = must | letters & ~captured & ~quoted
        functions = []
        unknown = 0
        for m in IDENTIFIER.finditer(line):
            place = bits([m.span()])
            if line[m.start() - 1:m.start()] in ('/', ':') or line[m.end():m.end() + 1] in ('/', '-'):
                continue  # part of a path or of a label
            if (place & spelt).bit_count() >= 4 and m.group() in self.texts.functions:
                functions.append(self.texts.functions[m.group()])
            elif place & spelt == place and m.group() not in self.texts.names:
                if m.group() in self.texts.functions:
                    functions.append(self.texts.functions[m.group()])
                else:
                    unknown |= place
        if not need or functions and not must:
            if functions and not unknown:
                return Verdict(seen, share=1.0, functions=functions)
            if about_prefix and not unknown:
                return Verdict(seen, share=1.0, functions=['what a printing function puts in front: ' + line[:free].strip()])
            return Verdict(seen, missing='(nothing in it could be compared)')

        if free and line[free:].strip() in self.texts.speakers:
            return Verdict(seen, share=1.0, functions=['the name alone: ' + line[free:].strip()])
        covers = self.texts.upon(line, free) if free else []
        covers += self.texts.upon(line)
        if STATUS.match(line):  # a column that only the init system writes
            covers = [c for c in covers if c.text.family in ('systemd', '*', 'openrc', 'initscripts')]
        best = self.best(line, covers, must, need, free)
        union = errors = 0
        for c in best:
            union |= c.places | c.named
            if c.text.family == '*' or c.text.prefix:
                errors |= c.places
        for m in QUOTED.finditer(line):  # what a message quotes may be a name or a label
            union |= bits(w.span() for w in WORD.finditer(line, *m.span()) if w.group() in self.texts.names or w.group().isupper())
        left, missing = (must | unknown) & ~union, ''
        for p, c in enumerate(line):
            if left >> p & 1:
                missing += c if not missing or left >> p - 1 & 1 else ' ' + c
        share = (union & need).bit_count() / need.bit_count()
        alone = any(len(c.text.words) > 2 and not must & ~(c.places | c.named | errors) for c in best)
        return Verdict(seen, sorted(best, key=lambda c: c.start), share, missing, alone=alone)

    def best(self, line, covers, must, need, free):
        """The texts that together cover most."""
        sorted_out = {}
        whole = need.bit_count()
        whole_line = bits(m.span() for m in WORD.finditer(line))
        blanks = bits(m.span() for m in re.finditer(' +', line))
        partners = {c.text.place for c in covers if not c.text.bare}
        for c in covers:
            if c.text.bare and c.text.family != '*' and line[c.start:].strip() != c.text.raw.strip() and \
                    not any(near(c.text.place, place) for place in partners):
                continue
            c.places &= ~blanks
            c.gain = (c.places & whole_line).bit_count()
            for start, end in c.gaps:
                # a name that a message is about, such as a module's or a program's
                inner = line[start:end].strip(' \'"<>').rstrip(':')
                if inner in self.texts.speakers or inner.isupper() and inner in self.texts.names or len(inner) == 1 or \
                        (c.text.family, inner) in self.texts.own or re.fullmatch('[0-9a-f]{8,}', inner):
                    c.named |= bits([(start, end)])
            least = 2 if c.text.prefix or c.text.bare or c.text.source else 4
            if c.gain >= min(least, whole):
                sorted_out.setdefault((c.places, c.text.file), c)
        covers = sorted(sorted_out.values(), key=lambda c: (-c.gain, c.text.bare, c.text.family == '*'))

        def key(chosen):
            """Most letters that must be, then most letters; a single word alone only when it is the whole message."""
            union = 0
            for c in chosen:
                union |= c.places | c.named
            fair = len(chosen) > 1 and all(c.anchored(chosen) for c in chosen) or \
                len(chosen) == 1 and not chosen[0].text.bare or \
                line[chosen[0].start:].strip() == chosen[0].text.raw.strip() and chosen[0].start in (0, free)
            return fair, (union & must).bit_count(), (union & need).bit_count()

        best, best_key = (), (True, -1, -1)
        words = sorted((c for c in covers if c.text.bare), key=lambda c: line[c.start:].strip() != c.text.raw.strip())
        bases = [c for c in covers if not c.text.bare][:25] + words[:5]
        for base in bases:
            chosen, now = [base], key([base])
            union = base.places
            while True:
                if now > best_key or now == best_key and len(chosen) < len(best):
                    best, best_key = tuple(chosen), now
                if now[2] == whole:
                    break
                files = {c.text.file for c in chosen}
                more, most = None, ((False,) + now[1:], False)
                for c in covers[:600]:
                    if c.places & union or not c.places & need:
                        continue
                    # neighbours from one source file count as one text
                    if len(files | {c.text.file} if c.text.source else files) > MOST_TEXTS or \
                            len(chosen) >= (MOST_TEXTS if not c.text.source else 4 * MOST_TEXTS):
                        continue
                    if not any(c.joins(o, line) for o in chosen):
                        continue
                    if not c.anchored(chosen + [c]):
                        continue
                    new = (key(chosen + [c]), c.text.file in files)
                    if new > most:
                        more, most = c, new
                if more is None or most[0][1:] <= now[1:]:
                    break
                chosen, now = chosen + [more], most[0]
                union |= more.places
        return best


# --- the base ----------------------------------------------------------------------------------------------------------

def plain(node):
    if isinstance(node, yaml.MappingNode):
        return {k.value: plain(v) for k, v in node.value} | {'#line': node.start_mark.line + 1}
    if isinstance(node, yaml.SequenceNode):
        return [plain(n) for n in node.value]
    return node.value


class Sign:
    def __init__(self, file, owner, sign, binding, families):
        self.file, self.at, self.owner, self.binding = file, sign['#line'], owner, binding
        self.families = families
        self.line, self.seen, self.reason = sign['line'], sign.get('seen', []), sign.get('printed-by')


def signs_of(base):
    loader = getattr(yaml, 'CSafeLoader', yaml.SafeLoader)
    signs, broken = [], []
    for top, folders, names in os.walk(base):
        folders.sort()
        for name in sorted(names):
            file = os.path.join(top, name)
            place = os.path.relpath(file, base).split(os.sep)[0]
            if not name.endswith(('.yaml', '.yml')) or place not in ('faults', 'trails', 'families'):
                continue
            try:
                with open(file, encoding='utf-8') as text:
                    whole = plain(yaml.compose(text, Loader=loader))
                if place == 'families':
                    lists = [whole.get(k, []) for k in ('recognise', 'may-be', 'begins', 'kernel-begins', 'milestones')]
                else:
                    lists = [whole.get('signs', [])]
                for sign in (s for one in lists for s in one):
                    if 'line' in sign:
                        families = [whole.get('id', name)] if place == 'families' else whole.get('family', [])
                        signs.append(Sign(file, whole.get('id', name), sign, place != 'families', families))
            except (yaml.YAMLError, AttributeError, TypeError, KeyError) as problem:
                broken.append(f'{file}: cannot be read: {" ".join(str(problem).split())}')
    return signs, broken


CHECKED = None


def verdicts(at):
    """The verdicts on the texts of one sign, or what is wrong with its expression."""
    judge, formats, signs = CHECKED
    try:
        expression = Expression(signs[at].line)
    except (re.error, ValueError, KeyError) as problem:
        return str(problem)
    found = []
    for seen in signs[at].seen:
        verdict = judge.judge(seen, expression)
        printer = None if verdict.printed or formats is None else formats.of(seen, expression)
        found.append(Verdict(seen, share=1.0, functions=[printer]) if printer else verdict)
    return found


class Formats:
    """A published list, asked another way: is the line one of these formats, with something in front or behind?

    In a list of a whole family nothing is missing because a package was not fetched, so a format that fits the whole line
    is proof, even where the sign spells out the name of a disk that stands in a conversion. The literal pieces of the
    format must be a fifth of the line's letters at least, and the sign must match in its span.
    """

    LEAST = 6
    SHARE = 0.2

    def __init__(self, table):
        self.by_piece = defaultdict(list)
        for program, file, raw in read_table(table):
            pieces = CONVERSION.split(squeezed(raw))[::2]
            literal = max(pieces, key=len, default='')
            if sum(map(str.isalpha, ''.join(pieces))) >= self.LEAST and len(literal) >= 4:
                self.by_piece[WORD.search(literal).group() if WORD.search(literal) else literal].append(
                    (pieces, f'{program} {file}: {raw}'))

    def of(self, seen, expression):
        line = squeezed(COLOUR.sub('', seen))
        match = expression.pattern.search(seen)
        letters = sum(map(str.isalpha, line))
        for word in set(WORD.findall(line)):
            for pieces, name in self.by_piece.get(word, ()):
                mine = sum(map(str.isalpha, ''.join(pieces)))
                if mine < self.SHARE * letters:
                    continue
                fits = re.search(r'(?:^|[]:)] |^[*\s]*)' + '(.*?)'.join(map(re.escape, pieces)) + r'(?=$|\W)', line)
                if fits and match:
                    return name
        return None


def squeezed(text):
    return ' '.join(text.split())


PUBLISHED = ('freebsd', 'darwin')
PLACEHOLDER = re.compile(r'\$\{[^}]*\}|\$\([^)]*\)|\$\w+|\{[A-Za-z_:]+\}')


def published(folder, family):
    """The list of a family's texts as a table of the usual form, in a file of its own; None where there is no list."""
    source = os.path.join(folder, family + '.tsv.gz') if folder else ''
    if not os.path.isfile(source):
        return None
    with tempfile.NamedTemporaryFile('w', suffix='.tsv', delete=False, encoding='utf-8') as out, \
            gzip.open(source, 'rt', encoding='utf-8', errors='replace') as rows:
        for row in rows:
            file, _, text = row.rstrip('\n').split('\t', 2)
            if file == 'file':
                continue
            text = PLACEHOLDER.sub('%s', text.replace('\\"', '"').replace("\\'", "'").replace('\\$', '$'))
            for line in re.split(r'\\n', text):
                line = line.replace('\\t', ' ').rstrip()
                if line.strip():
                    out.write(f'{family}\t{file}\t{line}\n')
    return out.name


def judged(signs, table, whole, jobs):
    """The verdicts on signs by one table, and what was read of it."""
    global CHECKED
    texts = Texts(table, [s for sign in signs for s in sign.seen])
    CHECKED = Judge(texts), Formats(table) if whole else None, signs
    with get_context('fork').Pool(jobs) as pool:  # the children share the texts that are already read
        return pool.map(verdicts, range(len(signs)), chunksize=20), texts.rows, texts.kept


def check(base, table, folder, show_all, report, jobs):
    began = time.time()
    every, broken = signs_of(base)
    if not every:
        print(f'printers: no signs in {base}', file=sys.stderr)
        return 1
    found = excused = none = needless = unsure = 0
    partly, rows = [], []
    signs, verdicts_of, read, kept = [], [], 0, 0
    groups = [(name, [s for s in every if s.families == [name]], published(folder, name)) for name in PUBLISHED]
    rest = [s for s in every if s.families not in ([name] for name in PUBLISHED)]
    groups.append(('the packages', rest, None if table == '-' else table))
    for name, some, its_table in groups:
        if some and its_table is None:
            rows.append(f'{len(some)} signs of {name} were not judged: no list of its texts was given')
        elif some:
            verdicts, all_rows, its_kept = judged(some, its_table, its_table != table, jobs)
            signs, verdicts_of = signs + some, verdicts_of + verdicts
            read, kept = read + all_rows, kept + its_kept
        if its_table and its_table != table:
            os.unlink(its_table)
    for at, sign in enumerate(signs):
        where = f'{sign.file}:{sign.at}: {sign.owner}'
        if isinstance(verdicts_of[at], str):
            broken.append(f'{where}: {verdicts_of[at]}: {sign.line}')
            continue
        good = [v for v in verdicts_of[at] if v.printed]
        bad = [v for v in verdicts_of[at] if not v.printed]
        if good and not sign.reason:
            found += 1
            for v in bad:
                partly.append((where, v))
            if show_all:
                rows.append(f'{where}\n    {good[0].line}\n    printed by {good[0].printers()}')
        elif good and not bad and all(v.alone for v in good):
            needless += sign.binding
            rows.append(f'{where}\n    {good[0].line}\n    has printed-by, and is printed by {good[0].printers()}')
        elif sign.reason:
            excused += 1
            if show_all:
                rows.append(f'{where}\n    {sign.line}\n    printed-by {sign.reason.get("program")}: '
                            f'{sign.reason.get("reason")}')
        else:
            none += sign.binding
            unsure += not sign.binding
            rows.append(f'{where}: nobody prints this' + ('' if sign.binding else ' (a family: does not fail)'))
            for v in bad:
                rows.append('    ' + explain(v))
    for where, v in partly:
        rows.append(f'{where}: one of its texts is printed by nobody\n    ' + explain(v))
    rows.extend(broken)
    rows.append(f'{len(signs)} signs: {found} printed, {excused} with printed-by, {none} without a printer, '
                f'{needless} with a needless printed-by, {unsure} of families unproven, {len(partly)} single texts unproven; '
                f'{read} message texts, {kept} of them looked at; {time.time() - began:.1f} s')
    out = '\n'.join(rows)
    if report:
        with open(report, 'w', encoding='utf-8') as file:
            file.write(out + '\n')
    print(out)
    return 1 if none or needless or broken else 0


def explain(v):
    near = f'; nearest: {v.printers()}' if v.by else ''
    missing = f'; in no text: {v.missing}' if v.missing else ''
    return f'{v.line}\n        covered {v.share:.0%}{missing}{near}'


# --- self-test ---------------------------------------------------------------------------------------------------------

# (expression, line). True ones are messages of the packages, see the names behind them.
TRUE = [
    (r'VFS: Unable to mount root fs on unknown-block\(0,0\)',
     'Kernel panic - not syncing: VFS: Unable to mount root fs on unknown-block(0,0)'),        # linux init/do_mounts.c
    (r'Attempted to kill init! exitcode=0x(?P<code>[0-9a-f]{8})',
     'Kernel panic - not syncing: Attempted to kill init! exitcode=0x00000100'),               # linux kernel/exit.c
    (r'SATA link down \(SStatus 0', 'ata2: SATA link down (SStatus 0 SControl 300)'),          # linux libata-core.c
    (r'Waiting for root device', 'Waiting for root device /dev/sda2...'),                      # linux init/do_mounts.c
    (r'nvme\d+: I/O \d+ QID \d+ timeout, reset controller', 'nvme nvme0: I/O 12 QID 0 timeout, reset controller'),
    (r'EXT4-fs error \(device (?P<dev>[^)]+)\)',
     'EXT4-fs error (device sda2): ext4_find_entry:1455: inode #2: comm init: reading directory lblock 0'),
    (r'Timed out waiting for device (?P<dev>\S+)\.', '[ TIME ] Timed out waiting for device /dev/disk/by-uuid/0b6e.'),
    (r'Dependency failed for (?P<what>.+)\.$', '[DEPEND] Dependency failed for Local File Systems.'),
    (r'You are in emergency mode\. After logging in',
     'You are in emergency mode. After logging in, type "journalctl -xb" to view'),            # systemd-sulogin-shell
    (r'Gave up waiting for root file system device', 'Gave up waiting for root file system device.  Common problems:'),
    (r'ALERT!\s+UUID=(?P<id>\S+) does not exist', 'ALERT!  UUID=0b6e1f0a does not exist.  Dropping to a shell!'),
    (r'No init found\. Try passing init= bootarg', 'No init found. Try passing init= bootarg.'),
    (r'Entering emergency mode\. Exit the shell to continue', 'Entering emergency mode. Exit the shell to continue.'),
    (r'no such device: (?P<id>\S+)\.', 'error: no such device: 0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d.'),
    (r'you need to load the kernel first', 'error: you need to load the kernel first.'),
    (r'Waiting for encrypted source device', 'Waiting for encrypted source device UUID=0b6e1f0a...'),
    (r'maximum number of tries exceeded', 'cryptsetup: ERROR: sda2_crypt: maximum number of tries exceeded'),
    (r'not enough to start the array', 'mdadm: /dev/md0 assembled from 1 drive - not enough to start the array.'),
    (r"Couldn't find device with uuid", "Couldn't find device with uuid 0b6e1f-77aa-4b55-9a3e-3c9d-8a1b-2c3d4e."),
    (r"can't access tty; job control turned off", "/bin/sh: can't access tty; job control turned off"),
    (r'UNEXPECTED INCONSISTENCY; RUN fsck MANUALLY', '/dev/sda2: UNEXPECTED INCONSISTENCY; RUN fsck MANUALLY.'),
    (r'Press Enter for maintenance', 'Press Enter for maintenance'),
    (r'BdsDxe: failed to load Boot[0-9A-F]{4}', 'BdsDxe: failed to load Boot0001 "UEFI Misc Device" from PciRoot(0x0)/'
     'Pci(0x3,0x0): Not Found'),
    (r'Failed to open (?P<what>\S+) - (?P<why>.+)', r'Failed to open \EFI\debian\grubx64.efi - Not Found'),
    (r'error while loading shared libraries: (?P<lib>[^:]+): cannot open shared object file',
     '/sbin/init: error while loading shared libraries: libfoo.so.1: cannot open shared object file: No such file or '
     'directory'),
]
# Invented ones; several are built from true words, or are true messages with a wrong word in them.
FALSE = [
    (r'VFS: Could not mount root fs on unknown-block', 'VFS: Could not mount root fs on unknown-block(0,0)'),
    (r'Attempted to stop init! exitcode', 'Kernel panic - not syncing: Attempted to stop init! exitcode=0x00000100'),
    (r'Root file system went away', 'Root file system went away, giving up'),
    (r'SATA cable unplugged', 'ata2: SATA cable unplugged (SStatus 0 SControl 300)'),
    (r'Gave up hoping for root file system', 'Gave up hoping for root file system device.  Common problems:'),
    (r'Failed to find the boot disk, please insert one', 'Failed to find the boot disk, please insert one'),
    (r'nvme\d+: controller fell off the bus', 'nvme nvme0: controller fell off the bus'),
    (r'Timed out while waiting on device', '[ TIME ] Timed out while waiting on device /dev/sda1.'),
    (r'cryptsetup: passphrase was wrong three times', 'cryptsetup: passphrase was wrong three times'),
    (r'no such disk in the menu', 'error: no such disk in the menu.'),
    (r'EXT4-fs \((?P<dev>[^)]+)\): the journal has gone missing', 'EXT4-fs (sda2): the journal has gone missing'),
    (r'not enough disks to begin the array', 'mdadm: not enough disks to begin the array'),
    (r'You are in trouble mode', 'You are in trouble mode. After logging in, type "journalctl -xb" to view system logs.'),
    (r'(?P<all>the lanterns went out at boot)', 'the lanterns went out at boot'),
]


def self_test(table):
    texts = Texts(table, [line for _, line in TRUE + FALSE])
    judge = Judge(texts)
    wrong = 0
    for cases, expected in ((TRUE, True), (FALSE, False)):
        for line, seen in cases:
            v = judge.judge(seen, Expression(line))
            if v.printed != expected:
                wrong += 1
                print(('not found: ' if expected else 'wrongly found: ') + explain(v))
    print(f'self-test: {len(TRUE)} true and {len(FALSE)} invented texts, {wrong} judged wrongly')
    return 1 if wrong else 0


def main():
    options = argparse.ArgumentParser(description=__doc__.split('\n')[0])
    options.add_argument('base', nargs='?')
    options.add_argument('texts')
    options.add_argument('--published', help='folder with the lists of texts of whole families')
    options.add_argument('--all', action='store_true', help='also list the signs that have a printer')
    options.add_argument('--report', help='write the list to this file as well')
    options.add_argument('--jobs', type=int, default=2, help='processes that judge at the same time')
    options.add_argument('--self-test', action='store_true')
    chosen = options.parse_args()
    if chosen.self_test:
        return self_test(chosen.texts)
    if not chosen.base:
        options.error('which base?')
    return check(chosen.base, chosen.texts, chosen.published, chosen.all, chosen.report, chosen.jobs)


if __name__ == '__main__':
    sys.exit(main())
