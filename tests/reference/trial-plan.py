# SPDX-License-Identifier: GPL-3.0-or-later
# Makes trial-plan-orders.csv: python3 trial-plan.py >trial-plan-orders.csv
# Ran with Python 3.11.2, whose random module has its own Mersenne Twister (Matsumoto and Nishimura 1998).
import random


def mersenne_twister(seed):
    """Python's generator, started as Matsumoto and Nishimura 2002 start theirs; theirs takes 0 for 4357."""
    state = [seed or 4357]
    for i in range(1, 624):
        state.append((1812433253 * (state[-1] ^ (state[-1] >> 30)) + i) & 0xFFFFFFFF)
    generator = random.Random()
    generator.setstate((3, tuple(state) + (624,), None))
    return generator


def below(generator, n):
    """An even draw from 0 to n - 1: whole steps of the generator's range, and what is left over is drawn again."""
    step = 0xFFFFFFFF // n
    while True:
        drawn = generator.getrandbits(32) // step
        if drawn < n:
            return drawn


def orders(seed, specimens):
    """The shuffle of Fisher and Yates, from the end."""
    generator = mersenne_twister(seed)
    order = list(range(1, specimens + 1))
    for i in range(specimens - 1, 0, -1):
        other = below(generator, i + 1)
        order[i], order[other] = order[other], order[i]
    return order


CASES = [(20250314, 10), (7, 7), (4294967295, 6), (7, 6), (0, 9), (4357, 9), (1, 2), (2, 19), (3, 102), (99, 40)]

print("# The order in which a trial's specimens are made, those of the first setting first: Python 3.11.2's Mersenne")
print("# Twister and the shuffle of Fisher and Yates, by trial-plan.py.")
print("seed,specimens,orders")
for seed, specimens in CASES:
    print(f"{seed},{specimens},{' '.join(map(str, orders(seed, specimens)))}")
