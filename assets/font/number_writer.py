"""Writes whole numbers so that few bytes are left: an arithmetic coder whose chances are learned from what it has written.

web/draw/number_stream.cpp reads what this writes. Both make the same predictions, bit for bit, so they use nothing but
whole numbers and +, -, * and / of IEEE 754 doubles in the same order: no logarithm of a library, no fused operation.
"""

SLOT_BITS = 19
MOST_SEEN = 250
LEARNING = 0.02
FIRST_WEIGHT = 0.35


def logarithms():
    """About ln((k + 0.4)/0.4) for k from 0 to MOST_SEEN."""
    values = [0.0]
    for k in range(MOST_SEEN):
        z = 1 / (2 * k + 1.8)
        values.append(values[-1] + 2 * z * (1 + z * z / 3))
    return values


def chances():
    """About 1/(1 + exp(-x)) for x from -8 to 8 in steps of 1/64, and from 1/4096 to 4095/4096."""
    values = []
    for i in range(1025):
        e = 1 - (i / 64 - 8) / 1024
        for _ in range(10):
            e = e * e
        values.append(max(1 / 4096, min(4095 / 4096, 1 / (1 + e))))
    return values


def mixed(h, value):
    h = ((h ^ (value & 0xFFFFFFFF)) * 0x9E3779B1) & 0xFFFFFFFF
    return h ^ (h >> 15)


def digits(value):
    """The bits that stand for `value`: whether it is not 0, whether it is negative, how many binary digits follow the first
    (as many ones and a zero), and these."""
    if value == 0:
        return [0]
    followed = bin(abs(value))[3:]
    return [1, int(value < 0), *[1] * len(followed), 0, *map(int, followed)]


class NumberWriter:
    """`contexts` has a text for each kind of number: 1 where a guess comes with it and 0 else, then groups of letters, each with a
    comma behind. A number may depend on what `known` has for the letters of a group, taken together."""

    def __init__(self, contexts):
        self.guesses = [int(text[0]) for text in contexts]
        self.contexts = [text[1:].split(",")[:-1] for text in contexts]
        self.known = {}
        self.out = bytearray()
        self.low, self.high = 0, 0xFFFFFFFF
        self.logs, self.chances = logarithms(), chances()
        self.seen = bytearray(2 << SLOT_BITS)
        self.weights = {}

    def number(self, kind, value, guess=0):
        """Writes `value`. `guess`: what it may well be. The reader knows the same and guesses the same."""
        keys = []
        for i, letters in enumerate(self.contexts[kind]):
            h = 0
            for letter in letters:
                h = mixed(h, self.known[letter])
            keys.append(mixed(mixed(0, kind * 16 + i), h))
        # What a guess says of the next bit is 0 or 1, or nothing more once a bit has shown it to be wrong.
        guessed, right, guess_key = digits(guess), True, mixed(0, kind * 16 + 15)
        bits = iter(enumerate(digits(value)))

        def write(stage, node):
            nonlocal right
            at, bit = next(bits)
            nodes = [mixed(key, node) for key in keys]
            if self.guesses[kind]:
                nodes.append(mixed(guess_key, -1 - 2 * stage - guessed[at] if right else node))
            self.bit(bit, kind * 32 + stage, [2 * (node >> 32 - SLOT_BITS) for node in nodes])
            right = right and guessed[at] == bit
            return bit

        if not write(0, 0):
            return
        negative = write(1, 1)
        size = 0
        while write(2 + size, 2 + negative + 2 * size):
            size += 1
        start = size * 2 + negative + 1 << 16
        magnitude = 1
        for j in range(size):
            magnitude = magnitude * 2 + write(31 if j == size - 1 else 16 + j, start + magnitude)

    def bit(self, bit, place, slots):
        seen, logs = self.seen, self.logs
        weights = self.weights.setdefault(place, [FIRST_WEIGHT] * len(slots))
        inputs = [logs[seen[s + 1]] - logs[seen[s]] for s in slots]
        total = 0.0
        for weight, x in zip(weights, inputs):
            total += weight * x
        chance = self.chances[int((max(-8.0, min(8.0, total)) + 8) * 64)]
        middle = self.low + (self.high - self.low >> 16) * int(chance * 65536)
        if bit:
            self.high = middle
        else:
            self.low = middle + 1
        while (self.low ^ self.high) < 1 << 24:
            self.out.append(self.high >> 24)
            self.low = self.low << 8 & 0xFFFFFFFF
            self.high = self.high << 8 & 0xFFFFFFFF | 255
        step = (bit - chance) * LEARNING
        for i, x in enumerate(inputs):
            weights[i] += step * x
        for s in slots:
            if seen[s + bit] < MOST_SEEN:
                seen[s + bit] += 1
            if seen[s + 1 - bit] > 2:
                seen[s + 1 - bit] = seen[s + 1 - bit] + 2 >> 1

    def finished(self):
        """All bytes. The reader looks four bytes ahead."""
        return bytes(self.out) + bytes([self.high >> 24, 0, 0, 0])
