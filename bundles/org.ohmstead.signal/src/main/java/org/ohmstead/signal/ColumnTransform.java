// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * The Fourier transform down each of many columns, in place, for lengths that are products of 2, 3 and 5. What is left of a block after a
 * step is finished before the next block, so that it stays in the processor's cache. The results come in another order of the rows.
 */
final class ColumnTransform {
    private static final int[] FACTORS = {5, 3, 4, 2};

    private final int size;
    private final int[] factors = new int[Integer.SIZE];
    private final int[] places;
    private final double[] cosines;
    private final double[] sines;

    ColumnTransform(int size) {
        this.size = size;
        int rest = size;
        int count = 0;
        for (int factor : FACTORS) {
            for (; rest % factor == 0; rest /= factor) {
                factors[count++] = factor;
            }
        }
        if (rest != 1) {
            throw new IllegalArgumentException("size must be a product of 2, 3 and 5, but is " + size);
        }
        cosines = new double[size];
        sines = new double[size];
        places = new int[size];
        for (int i = 0; i < size; i++) {
            cosines[i] = Math.cos(2 * Math.PI * i / size);
            sines[i] = -Math.sin(2 * Math.PI * i / size);
            places[elementAt(i)] = i;
        }
    }

    /** Whether a length is a product of 2, 3 and 5. */
    static boolean serves(int size) {
        int rest = size;
        for (int factor : FACTORS) {
            while (rest > 1 && rest % factor == 0) {
                rest /= factor;
            }
        }
        return rest == 1;
    }

    private int elementAt(int row) {
        int left = row;
        int block = size;
        int element = 0;
        int weight = 1;
        for (int depth = 0; block > 1; depth++) {
            block /= factors[depth];
            element += weight * (left / block);
            left %= block;
            weight *= factors[depth];
        }
        return element;
    }

    /** Returns the row that holds an element of the results. */
    int rowOf(int element) {
        return places[element];
    }

    /** Transforms the first {@code width} columns of the rows. */
    void forward(double[][] re, double[][] im, int width) {
        block(re, im, width, 0, size, 0);
    }

    private void block(double[][] re, double[][] im, int width, int first, int length, int depth) {
        if (length == 1) {
            return;
        }
        int factor = factors[depth];
        int part = length / factor;
        int scale = size / length;
        for (int j = 0; j < part; j++) {
            int row = first + j;
            switch (factor) {
                case 2 -> Butterflies.cross(re[row], im[row], re[row + part], im[row + part], width);
                case 3 -> {
                    Butterflies.third(re[row], re[row + part], re[row + 2 * part], width);
                    Butterflies.third(im[row], im[row + part], im[row + 2 * part], width);
                    mirrored(re, im, row + part, row + 2 * part, width);
                }
                case 4 -> {
                    Butterflies.fourth(re, row, part, width);
                    Butterflies.fourth(im, row, part, width);
                    mirrored(re, im, row + part, row + 3 * part, width);
                }
                default -> five(re, im, row, part, width);
            }
            for (int k = 1; k < factor && j > 0; k++) {
                int turn = k * j * scale;
                Butterflies.turn(re[row + k * part], im[row + k * part], cosines[turn], sines[turn], width);
            }
        }
        for (int k = 0; k < factor; k++) {
            block(re, im, width, first + k * part, part, depth + 1);
        }
    }

    private static void five(double[][] re, double[][] im, int a, int part, int width) {
        int b = a + part;
        int c = b + part;
        int d = c + part;
        int e = d + part;
        Butterflies.cross(re[b], im[b], re[e], im[e], width);
        Butterflies.cross(re[c], im[c], re[d], im[d], width);
        Butterflies.fifthEven(re[a], re[b], re[c], width);
        Butterflies.fifthEven(im[a], im[b], im[c], width);
        Butterflies.fifthOdd(re[e], re[d], width);
        Butterflies.fifthOdd(im[e], im[d], width);
        mirrored(re, im, b, e, width);
        mirrored(re, im, c, d, width);
    }

    /** Makes two results, one the mirror image of the other, out of their even and odd parts. */
    private static void mirrored(double[][] re, double[][] im, int even, int odd, int width) {
        Butterflies.crossQuarter(re[even], im[even], re[odd], im[odd], width);
    }
}
