"""CVODE of SUNDIALS with compiled rates, and nothing but compiled code while it runs.

The library is the one inside the package scikit-sundae. Its C functions are called from a loop that
numba compiles, and it calls the rates as a C function that numba compiled: no Python in between.
"""

import ctypes
from pathlib import Path

from numba import carray, cfunc, njit, types
import numpy as np
import sksundae

ADAMS, BDF = 1, 2
NORMAL = 1
MOST_STEPS = 1_000_000
# Pointers are plain unsigned numbers here, so that compiled code can hand them on.
POINTER = ctypes.c_size_t


def _load(name):
    folder = Path(sksundae.__file__).parents[1] / "scikit_sundae.libs"
    found = sorted(folder.glob(f"libsundials_{name}-*"))
    if not found:
        raise OSError(f"no SUNDIALS library '{name}' in {folder}")
    return ctypes.CDLL(str(found[0]), mode=ctypes.RTLD_GLOBAL)


def _function(library, name, result, *arguments):
    function = getattr(library, name)
    function.restype = result
    function.argtypes = arguments
    return function


_core = _load("core")
_vectors = _load("nvecserial")
_matrices = _load("sunmatrixdense")
_linear = _load("sunlinsoldense")
_cvode = _load("cvode")

_array_of = _function(
    _core, "N_VGetArrayPointer", ctypes.POINTER(ctypes.c_double), POINTER
)
_version = _function(_core, "SUNDIALSGetVersion", ctypes.c_int, ctypes.c_char_p, ctypes.c_int)
_context = _function(_core, "SUNContext_Create", ctypes.c_int, ctypes.c_int, ctypes.c_void_p)
_quiet = _function(_core, "SUNContext_ClearErrHandlers", ctypes.c_int, POINTER)
_vector = _function(
    _vectors, "N_VMake_Serial", POINTER, ctypes.c_int64, ctypes.c_void_p, POINTER
)
_matrix = _function(
    _matrices, "SUNDenseMatrix", POINTER, ctypes.c_int64, ctypes.c_int64, POINTER
)
_dense = _function(_linear, "SUNLinSol_Dense", POINTER, POINTER, POINTER, POINTER)
_fixed_point = _function(
    _cvode, "SUNNonlinSol_FixedPoint", POINTER, POINTER, ctypes.c_int, POINTER
)
_create = _function(_cvode, "CVodeCreate", POINTER, ctypes.c_int, POINTER)
_init = _function(
    _cvode, "CVodeInit", ctypes.c_int, POINTER, ctypes.c_void_p, ctypes.c_double, POINTER
)
_again = _function(
    _cvode, "CVodeReInit", ctypes.c_int, POINTER, ctypes.c_double, POINTER
)
_tolerances = _function(
    _cvode, "CVodeSVtolerances", ctypes.c_int, POINTER, ctypes.c_double, POINTER
)
_use_linear = _function(
    _cvode, "CVodeSetLinearSolver", ctypes.c_int, POINTER, POINTER, POINTER
)
_use_nonlinear = _function(
    _cvode, "CVodeSetNonlinearSolver", ctypes.c_int, POINTER, POINTER
)
_most_steps = _function(
    _cvode, "CVodeSetMaxNumSteps", ctypes.c_int, POINTER, ctypes.c_long
)
_go = _function(
    _cvode,
    "CVode",
    ctypes.c_int,
    POINTER,
    ctypes.c_double,
    POINTER,
    POINTER,
    ctypes.c_int,
)
_count = _function(
    _cvode, "CVodeGetNumRhsEvals", ctypes.c_int, POINTER, ctypes.c_void_p
)
_count_linear = _function(
    _cvode, "CVodeGetNumLinRhsEvals", ctypes.c_int, POINTER, ctypes.c_void_p
)


def version():
    """Version of SUNDIALS."""
    text = ctypes.create_string_buffer(32)
    _version(text, 32)
    return text.value.decode()


def _good(flag, what):
    if flag < 0:
        raise RuntimeError(f"{what} answered {flag}")


class Cvode:
    """One bag, ready to be solved again and again. What it holds is never given back."""

    def __init__(self, rates, start, minutes, first, method, newton):
        count = len(start)

        @cfunc(types.int32(types.float64, types.uintp, types.uintp, types.uintp))
        def right_hand_side(t, y, dy, _):
            rates(t, carray(_array_of(y), (count,)), carray(_array_of(dy), (count,)))
            return 0

        self._rates = right_hand_side
        self._start, self._first = np.array(start), first
        self._minutes = np.array(minutes)
        self._y, self._absolute = np.array(start), np.ones(count)
        self._out = np.zeros((len(minutes), count))
        context = POINTER()
        _good(_context(0, ctypes.byref(context)), "SUNContext_Create")
        context = context.value
        # A tolerance that is too tight is an answer here, not an accident to print.
        _quiet(context)
        self._vector = _vector(count, self._y.ctypes.data, context)
        self._absolute_vector = _vector(count, self._absolute.ctypes.data, context)
        self._memory = _create(method, context)
        flag = _init(self._memory, right_hand_side.address, first, self._vector)
        _good(flag, "CVodeInit")
        _good(_tolerances(self._memory, 1e-6, self._absolute_vector), "CVodeSVtolerances")
        _good(_most_steps(self._memory, MOST_STEPS), "CVodeSetMaxNumSteps")
        if newton:
            matrix = _matrix(count, count, context)
            solver = _dense(self._vector, matrix, context)
            _good(_use_linear(self._memory, solver, matrix), "CVodeSetLinearSolver")
        else:
            solver = _fixed_point(self._vector, 0, context)
            _good(_use_nonlinear(self._memory, solver), "CVodeSetNonlinearSolver")
        self._newton = newton
        self._run = _loop(self._memory, self._vector)

    def set(self, relative, absolute):
        """Sets the tolerances."""
        self._absolute[:] = absolute
        _good(_tolerances(self._memory, relative, self._absolute_vector), "CVodeSVtolerances")

    def solve(self):
        """States at every minute."""
        flag = self._run(self._first, self._minutes, self._start, self._y, self._out)
        _good(flag, "CVode")
        return self._out

    def evaluations(self):
        """Calls of the rates in the last solution, those for derivatives included."""
        calls, more = ctypes.c_long(), ctypes.c_long()
        _count(self._memory, ctypes.byref(calls))
        if self._newton:
            _count_linear(self._memory, ctypes.byref(more))
        return calls.value + more.value


def _loop(memory, vector):
    memory, vector = np.uintp(memory), np.uintp(vector)

    @njit
    def run(first, minutes, start, y, out):
        reached = np.zeros(1)
        y[:] = start
        flag = _again(memory, first, vector)
        for k in range(len(minutes)):
            if flag < 0:
                return flag
            if minutes[k] > first:
                flag = _go(memory, minutes[k], vector, reached.ctypes.data, NORMAL)
            out[k, :] = y
        return flag

    return run
