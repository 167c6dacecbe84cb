"""A torque wrench with an offset head, by the moment of a force about two points (numpy)."""

import random

import numpy as np

from bench import Group, sure, value


def turning(force, at, about):
    """Moment of a plane force about a point."""
    arm = at - about
    return arm[0] * force[1] - arm[1] * force[0]


def lever(bench):
    """The hand pulls square at the grip: the wrench feels its moment about the drive, the fastener about itself."""
    group = Group("offset head, moments by numpy")
    draw = random.Random(9)
    for trial in range(60):
        wrench, head = round(draw.uniform(200, 900), 3), round(draw.uniform(20, 150), 3)
        angle = draw.choice([0, 45, 90, 135, 180]) if trial % 2 else round(draw.uniform(0, 180), 3)
        wanted = round(draw.uniform(5, 300), 3)
        drive, grip = np.zeros(2), np.array([-wrench, 0.0])
        fastener = head * np.array([np.cos(np.radians(angle)), np.sin(np.radians(angle))])
        pull = np.array([0.0, 1.0])
        expected = wanted * turning(pull, grip, drive) / turning(pull, grip, fastener)
        found = bench.ask(bench="torque", torque=sure(wanted, "N·m"), wrench=sure(wrench, "mm"), head=sure(head, "mm"),
                          angle=sure(angle, "°"))
        group.near(f"{wanted} N·m, {wrench} and {head} mm at {angle}°", value(found["set"]), expected, 1e-8 * expected)
    return group.done()
