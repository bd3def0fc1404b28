// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.FisherF;

/**
 * The crossed two-way analysis of variance with interaction, both factors random: every row is measured in every column
 * equally often (D. C. Montgomery and G. C. Runger, Quality Engineering 6, 1993; ISO 22514-7 uses the same model).
 *
 * @param rows the rows' share of the sum of squares
 * @param columns the columns' share
 * @param interaction what rows and columns do together beyond each alone
 * @param error what repeats of the same cell differ by
 * @param repeats the number of readings in each cell, at least 2
 * @param mean the mean of all readings
 */
public record TwoWayAnova(Line rows, Line columns, Line interaction, Line error, int repeats, double mean) {

    /**
     * One line of the table.
     *
     * @param squares the sum of squares, at least 0
     * @param freedom the degrees of freedom, at least 1
     */
    public record Line(double squares, int freedom) {

        /** Checks the ranges given above. */
        public Line {
            Checks.notNegative("squares", squares);
            if (freedom < 1) {
                throw new IllegalArgumentException("freedom is " + freedom + " but must be at least 1.");
            }
        }

        /** Returns the mean square. */
        public double meanSquare() {
            return squares / freedom;
        }

        private double chanceOver(Line other) {
            return FisherF.above(meanSquare(), freedom, other.meanSquare(), other.freedom());
        }

        private Line plus(Line other) {
            return new Line(squares + other.squares, freedom + other.freedom);
        }
    }

    /**
     * Variances, each at least 0; an estimate below zero counts as zero.
     *
     * @param rows of the rows' true means
     * @param columns of the columns' true means
     * @param interaction of the cells' true means beyond those; 0 if pooled
     * @param repeatability of repeated readings of a cell
     * @param pooled whether the interaction was so slight that it was counted as repeatability
     */
    public record Components(double rows, double columns, double interaction, double repeatability, boolean pooled) {

        /** Checks the ranges given above. */
        public Components {
            Checks.notNegative("rows", rows);
            Checks.notNegative("columns", columns);
            Checks.notNegative("interaction", interaction);
            Checks.notNegative("repeatability", repeatability);
        }

        /** Returns the sum of all four. */
        public double total() {
            return rows + columns + interaction + repeatability;
        }
    }

    /**
     * Returns the analysis.
     *
     * @param cells readings by row, column and repeat: at least two rows, two columns and two repeats, the same number
     *     of repeats everywhere
     */
    public static TwoWayAnova of(double[][][] cells) {
        check(cells);
        int rowCount = cells.length;
        int columnCount = cells[0].length;
        int repeats = cells[0][0].length;
        double[] rowMeans = new double[rowCount];
        double[] columnMeans = new double[columnCount];
        double[][] cellMeans = new double[rowCount][columnCount];
        double mean = 0;
        double errorSquares = 0;
        for (int i = 0; i < rowCount; i++) {
            for (int j = 0; j < columnCount; j++) {
                Group cell = Group.of(cells[i][j]);
                cellMeans[i][j] = cell.mean();
                errorSquares += cell.squares();
                rowMeans[i] += cell.mean() / columnCount;
                columnMeans[j] += cell.mean() / rowCount;
                mean += cell.mean() / (rowCount * columnCount);
            }
        }
        double rowSquares = columnCount * repeats * squaresAbout(mean, rowMeans);
        double columnSquares = rowCount * repeats * squaresAbout(mean, columnMeans);
        double interactionSquares = 0;
        for (int i = 0; i < rowCount; i++) {
            for (int j = 0; j < columnCount; j++) {
                double rest = cellMeans[i][j] - rowMeans[i] - columnMeans[j] + mean;
                interactionSquares += repeats * rest * rest;
            }
        }
        return new TwoWayAnova(
                new Line(rowSquares, rowCount - 1),
                new Line(columnSquares, columnCount - 1),
                new Line(interactionSquares, (rowCount - 1) * (columnCount - 1)),
                new Line(errorSquares, rowCount * columnCount * (repeats - 1)),
                repeats,
                mean);
    }

    /** Returns how likely chance alone makes the rows differ as much (over the interaction), 0 to 1. */
    public double rowsPValue() {
        return rows.chanceOver(interaction);
    }

    /** Returns how likely chance alone makes the columns differ as much (over the interaction), 0 to 1. */
    public double columnsPValue() {
        return columns.chanceOver(interaction);
    }

    /** Returns how likely chance alone makes an interaction as strong (over the repeats), 0 to 1. */
    public double interactionPValue() {
        return interaction.chanceOver(error);
    }

    /**
     * Returns the variance components.
     *
     * @param poolAbove the interaction is counted as repeatability if its probability by chance is above this; 1 never
     *     pools, 0.25 is usual
     */
    public Components components(double poolAbove) {
        int rowCount = rows.freedom() + 1;
        int columnCount = columns.freedom() + 1;
        boolean pooled = interactionPValue() > poolAbove;
        double repeatability = pooled ? interaction.plus(error).meanSquare() : error.meanSquare();
        double base = pooled ? repeatability : interaction.meanSquare();
        return new Components(
                Math.max(0, (rows.meanSquare() - base) / (columnCount * repeats)),
                Math.max(0, (columns.meanSquare() - base) / (rowCount * repeats)),
                pooled ? 0 : Math.max(0, (base - repeatability) / repeats),
                repeatability,
                pooled);
    }

    private static double squaresAbout(double mean, double[] means) {
        double sum = 0;
        for (double each : means) {
            sum += (each - mean) * (each - mean);
        }
        return sum;
    }

    private static void check(double[][][] cells) {
        if (cells.length < 2 || cells[0].length < 2 || cells[0][0].length < 2) {
            throw new IllegalArgumentException("cells must have at least two rows, two columns and two repeats.");
        }
        for (double[][] row : cells) {
            Checks.sameLength("a row of cells", row.length, "the first row", cells[0].length);
            for (double[] cell : row) {
                Checks.sameLength("a cell", cell.length, "the first cell", cells[0][0].length);
            }
        }
    }
}
