"""New inputs from known ones: cut, doubled, spliced, with odd signs and words put in."""

from __future__ import annotations

import random
from collections.abc import Sequence

LARGEST = 6000
"""Bytes of an input; most slips need few, and the largest files have tests of their own."""

_ODD = (
    "\0 \t \n \r \r\n \x0b \x1b \x7f \x85 \xa0 \xad \u0130 \u0131 \u0301 \u200b \u200d \u202e \u2028 "
    "\u2029 \ufeff \ufffe \uffff \ud800 \udcff \U0001f457 \U0010ffff ß İ ﬁ ① ٣ Ⅳ ½ а ο “ ” – −"
)
ODD = (
    *(sign.encode("utf-8", "surrogatepass") for sign in _ODD.split(" ")),
    *(b"\xff", b"\xc0\xaf", b"\xed\xa0\x80", b"\xf4\x90\x80\x80"),
)
NUMBERS = (
    b"0",
    b"-1",
    b"00",
    b"1e9",
    b"999999999999999999999",
    b"2147483648",
    b"1.5",
    b"NaN",
    b"0x1F",
    b"1_0",
)
SIGNS = tuple(bytes([each]) for each in b" !\"#$%&'()*+,-./:;<=>?@[\\]^_`{|}~")


class Mutator:
    """Makes inputs from a corpus and a dictionary, the same ones for the same ``chance``."""

    def __init__(self, chance: random.Random, words: Sequence[bytes]) -> None:
        self.chance = chance
        self.words = tuple(words)

    def mutated(self, corpus: Sequence[bytes]) -> bytes:
        """A known input with one to eight changes."""
        chance = self.chance
        data = bytearray(chance.choice(corpus))
        for _ in range(1 << chance.randrange(4)):
            self.change(data, corpus)
        return bytes(data[:LARGEST])

    def change(self, data: bytearray, corpus: Sequence[bytes]) -> None:
        chance = self.chance
        at = chance.randrange(len(data) + 1)
        end = min(len(data), at + 1 + int(chance.expovariate(1 / 12)))
        match chance.randrange(13):
            case 0:
                del data[at:end]
            case 1:
                data[at:at] = data[at:end] * chance.choice((1, 1, 2, 30))
            case 2:
                data[at:at] = chance.choice(ODD)
            case 3:
                data[at:at] = chance.choice(SIGNS) * chance.choice((1, 1, 1, 2, 40))
            case 4 | 5 | 6:
                data[at : chance.choice((at, end))] = chance.choice(self.words or SIGNS)
            case 7:
                other = chance.choice(corpus)
                start = chance.randrange(len(other) + 1)
                data[at:end] = other[start : start + 1 + int(chance.expovariate(1 / 30))]
            case 8:
                self.digits(data, at)
            case 9 if at < len(data):
                data[at] = chance.randrange(256)
            case 10:
                self.lines(data)
            case 11:
                data[at:end] = bytes(data[at:end]).swapcase()
            case _:
                start = chance.randrange(len(data) + 1)
                data[at:at] = data[start : start + 1 + int(chance.expovariate(1 / 20))]

    def digits(self, data: bytearray, at: int) -> None:
        """Another number in the place of the next one."""
        while at < len(data) and not 48 <= data[at] <= 57:
            at += 1
        end = at
        while end < len(data) and 48 <= data[end] <= 57:
            end += 1
        other = str(self.chance.randrange(10 ** self.chance.randint(1, 6))).encode()
        data[at:end] = self.chance.choice((*NUMBERS, other, other, other))

    def lines(self, data: bytearray) -> None:
        """A line taken out, doubled, moved in or out, or changed with another."""
        chance = self.chance
        rows = bytes(data).split(b"\n")
        at, other = chance.randrange(len(rows)), chance.randrange(len(rows))
        match chance.randrange(5):
            case 0:
                del rows[at]
            case 1:
                rows.insert(other, rows[at])
            case 2:
                rows[at] = b" " * chance.randrange(5) + rows[at].lstrip(b" ")
            case 3:
                rows[at], rows[other] = rows[other], rows[at]
            case _:
                rows[at] = rows[at].rstrip(b" ") + chance.choice((b" ", b"\r", b" # x", b" #x", b":", b","))
        data[:] = b"\n".join(rows)
