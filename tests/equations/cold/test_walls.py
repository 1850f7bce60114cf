"""The shape factor of a box against conduction solved in three dimensions by finite volumes."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from scipy.sparse import coo_array
from scipy.sparse.linalg import cg

from curbwright.equations import cold as eq

BOXES = [(0.60, 0.40, 0.40, 0.05), (0.40, 0.40, 0.40, 0.05), (0.35, 0.25, 0.45, 0.025), (0.9, 0.5, 0.6, 0.1)]


@cache
def flows(width: float, depth: float, height: float, wall: float, across: int) -> tuple[float, ...]:
    """Heat for a degree and a unit of conductivity into an eighth of a box through its three outer faces.

    The inside is at 0 and the outside at 1; ``across`` cells lie across the wall. The sums of all faces of a
    whole box are eight times these.
    """
    cell = wall / across
    inner = [round(size / 2 / cell) for size in (width, depth, height)]
    counts = [number + across for number in inner]
    place = np.indices(counts)
    foam = (place >= np.array(inner)[:, None, None, None]).any(axis=0)
    index = np.full(counts, -1)
    index[foam] = np.arange(foam.sum())
    diagonal, right = np.zeros(foam.sum()), np.zeros(foam.sum())
    rows, columns = [], []
    for axis in range(3):
        here = np.moveaxis(index, axis, 0)
        near, far = here[:-1], here[1:]
        both = (near >= 0) & (far >= 0)
        rows += [near[both], far[both]]
        columns += [far[both], near[both]]
        np.add.at(diagonal, near[both], 1.0)
        np.add.at(diagonal, far[both], 1.0)
        # Half a cell to the inside face, at 0, and to the outside face, at 1.
        np.add.at(diagonal, far[(near < 0) & (far >= 0)], 2.0)
        outer = here[-1][here[-1] >= 0]
        np.add.at(diagonal, outer, 2.0)
        np.add.at(right, outer, 2.0)
    every = np.arange(foam.sum())
    row, column = np.concatenate([*rows, every]), np.concatenate([*columns, every])
    value = np.concatenate([-np.ones(len(row) - len(every)), diagonal])
    matrix = coo_array((value, (row, column)), shape=(len(every),) * 2).tocsr()
    solved, failed = cg(matrix, right, rtol=1e-9, M=coo_array((1 / diagonal, (every, every))).tocsr())
    assert not failed
    found = []
    for axis in range(3):
        outer = np.moveaxis(index, axis, 0)[-1]
        found.append(float((2 * (1 - solved[outer[outer >= 0]])).sum() * cell))
    return tuple(found)


def solved(width: float, depth: float, height: float, wall: float) -> float:
    """Shape factor of the whole box, on two grids and carried on to a cell of nothing."""
    coarse, fine = (8 * sum(flows(width, depth, height, wall, across)) for across in (4, 8))
    return fine + (fine - coarse) / 3


def formula(width: float, depth: float, height: float, wall: float) -> float:
    sides = {"width": width, "depth": depth, "height": height}
    return eq.shape_factor(area=eq.inside_area(**sides), edges=eq.edge_length(**sides), wall=wall)


@pytest.mark.parametrize("box", BOXES, ids=str)
def test_faces_edges_and_corners_add_up_to_the_solution_in_three_dimensions(
    box: tuple[float, float, float, float],
) -> None:
    assert formula(*box) == pytest.approx(solved(*box), rel=0.005)


def test_areas_alone_would_be_far_off() -> None:
    width, depth, height, wall = BOXES[0]
    sides = {"width": width, "depth": depth, "height": height}
    exact = solved(*BOXES[0])
    assert eq.inside_area(**sides) / wall < 0.9 * exact
    assert eq.outside_area(**sides, wall=wall) / wall > 1.3 * exact


@pytest.mark.parametrize("box", BOXES, ids=str)
def test_edges_and_corners_are_shared_out_with_the_faces(box: tuple[float, float, float, float]) -> None:
    """A hot face takes its share of the inside area: within a tenth of what it takes in three dimensions."""
    width, depth, height, _ = box
    area = eq.inside_area(width=width, depth=depth, height=height)
    through = flows(*box, 8)
    for flow, face in zip(through, (depth * height, width * height, width * depth), strict=True):
        assert eq.face_share(2 * face, area) == pytest.approx(flow / sum(through), rel=0.1)


def test_a_large_box_with_a_thin_wall_is_six_flat_walls() -> None:
    assert formula(10.0, 10.0, 10.0, 0.01) == pytest.approx(600 / 0.01, rel=0.002)


def test_films_only_ever_help_and_vanish_when_strong() -> None:
    def through(film: float) -> float:
        return float(
            eq.wall_conductance(
                conductivity=0.024, shape_factor=28.7, inside_area=1.28, outside_area=1.9, inside_film=film,
                outside_film=film,
            )
        )  # fmt: skip

    assert through(5.0) < through(20.0) < 0.024 * 28.7
    assert through(1e9) == pytest.approx(0.024 * 28.7)


def test_heat_at_an_hour_is_its_parts() -> None:
    parts = eq.heat_through(conductance=0.7, outside=308.0, inside=276.0) + 0.25 * 8.0 + 3.0
    whole = eq.heat_at_hour(
        conductance=0.7, surroundings=308.0, inside=276.0, serving=8.0, served=0.25, steady=3.0
    )
    assert whole == pytest.approx(parts)
