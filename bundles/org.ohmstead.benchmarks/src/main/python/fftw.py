# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""The transform of real samples by FFTW 3, called in its library without a copy: the reference of the row "fft".

Arguments: size, and how many transforms one piece of work has. The plan is FFTW's measured one for real input, made before anything is
timed. The samples are kept, as with ours.
"""

import ctypes
import sys

import numpy as np
import turns

FFTW_MEASURE = 0
# Planning the longest size would take minutes on a busy machine; FFTW then takes the best that it has found.
PLANNING_SECONDS = 20.0

size, repeats = int(sys.argv[1]), int(sys.argv[2])
library = ctypes.CDLL("libfftw3.so.3")
library.fftw_malloc.restype = ctypes.c_void_p
library.fftw_malloc.argtypes = [ctypes.c_size_t]
library.fftw_plan_dft_r2c_1d.restype = ctypes.c_void_p
library.fftw_plan_dft_r2c_1d.argtypes = [ctypes.c_int, ctypes.c_void_p, ctypes.c_void_p, ctypes.c_uint]
library.fftw_set_timelimit.argtypes = [ctypes.c_double]
library.fftw_execute.argtypes = [ctypes.c_void_p]


def aligned(kind, count):
    """An array in FFTW's own aligned memory."""
    place = library.fftw_malloc(np.dtype(kind).itemsize * count)
    return place, np.frombuffer((ctypes.c_char * (np.dtype(kind).itemsize * count)).from_address(place), kind)


input_place, samples = aligned(np.float64, size)
output_place, transform = aligned(np.complex128, size // 2 + 1)
library.fftw_set_timelimit(PLANNING_SECONDS)
plan = library.fftw_plan_dft_r2c_1d(size, input_place, output_place, FFTW_MEASURE)


def work():
    for _ in range(repeats):
        library.fftw_execute(plan)


# Planning wrote over them. They are made from whole numbers, which any language makes alike.
samples[:] = (np.arange(size, dtype=np.int64) * 7919 % 10007) / 10007.0 - 0.5
library.fftw_execute(plan)
squares = np.abs(transform) ** 2
figures = {"square.%d" % k: squares[k] for k in (1, 2, 17, size // 2 - 1)}
figures["sum"] = squares.sum()
turns.serve(work, figures)
