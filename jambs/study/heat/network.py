"""Direct solution of a network of conductances between neighbors on a grid."""

import numpy as np
from scipy.sparse import csc_array
from scipy.sparse.linalg import splu

from jambs.study.regions.grid import Floats


def solve_network(*, along_x: Floats, along_y: Floats, to_ground: Floats, source: Floats) -> Floats:
    """Potential of every point of a grid of conductances.

    `along_x` joins neighbors (columns - 1 x rows), `along_y` (columns x rows - 1), `to_ground` joins every point to
    potential 0, `source` flows into every point. A point that nothing joins gets potential 0.
    Method: sparse factors in minimum degree order without pivoting, which a matrix like this one does not need. (A band
    solver is twice as fast alone, but its threads wait for each other for seconds on a busy machine; panels of one
    column are a quarter faster than the wider ones the library would take.)
    """
    diagonal = _diagonal(along_x, along_y, to_ground)
    joined = diagonal.ravel() != 0
    factors = splu(
        _matrix(along_x, along_y, diagonal, joined),
        permc_spec="MMD_AT_PLUS_A",
        diag_pivot_thresh=0.0,
        panel_size=1,
        options={"SymmetricMode": True},
    )
    potential = np.zeros(source.size)
    potential[joined] = factors.solve(source.ravel()[joined])
    return potential.reshape(source.shape)


def _diagonal(along_x: Floats, along_y: Floats, to_ground: Floats) -> Floats:
    diagonal = to_ground.copy()
    diagonal[:-1] += along_x
    diagonal[1:] += along_x
    diagonal[:, :-1] += along_y
    diagonal[:, 1:] += along_y
    return diagonal


def _matrix(along_x: Floats, along_y: Floats, diagonal: Floats, joined: np.ndarray) -> csc_array:
    """The matrix of the joined points only, column by column."""
    columns, rows = diagonal.shape
    # Up to five entries per column, in rising order: two neighbors before, the point itself, two after.
    entries = np.zeros((columns, rows, 5))
    entries[1:, :, 0] = -along_x
    entries[:, 1:, 1] = -along_y
    entries[:, :, 2] = diagonal
    entries[:, :-1, 3] = -along_y
    entries[:-1, :, 4] = -along_x
    by_point = entries.reshape(-1, 5)
    number = np.cumsum(joined, dtype=np.int32) - np.int32(1)
    place = np.arange(len(by_point))[:, None] + np.array([-rows, -1, 0, 1, rows])
    filled = by_point != 0
    starts = np.concatenate([[0], np.cumsum(filled.sum(axis=1)[joined])]).astype(np.int32)
    return csc_array((by_point[filled], number[place[filled]], starts), shape=(joined.sum(), joined.sum()))
