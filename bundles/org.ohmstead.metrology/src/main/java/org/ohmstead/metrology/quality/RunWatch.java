// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.EnumSet;

/** Watches the points of a control chart one after the other for the patterns of {@link RunRule}. */
final class RunWatch {

    private static final int MEMORY = 8;
    private static final double LIMIT = 3;

    private final double[] recent = new double[MEMORY];
    private int seen;
    private int sideRun;
    private int trendRun;
    private int swingRun;
    private int nearRun;
    private int awayRun;

    /** Takes the next point, its distance from the centre line in sigma, and returns the patterns it completes. */
    EnumSet<RunRule> accept(double z) {
        double before = seen > 0 ? recent[(seen - 1) % MEMORY] : 0;
        double beforeThat = seen > 1 ? recent[(seen - 2) % MEMORY] : 0;
        count(z, before, beforeThat);
        recent[seen % MEMORY] = z;
        seen++;
        EnumSet<RunRule> complete = EnumSet.noneOf(RunRule.class);
        add(complete, RunRule.BEYOND_LIMITS, Math.abs(z) > LIMIT);
        add(complete, RunRule.TWO_OF_THREE_FAR_OUT, Math.abs(z) > 2 && beyond(z, 2, 3) >= 2);
        add(complete, RunRule.FOUR_OF_FIVE_OFF_CENTRE, Math.abs(z) > 1 && beyond(z, 1, 5) >= 4);
        add(complete, RunRule.EIGHT_ON_ONE_SIDE, sideRun >= 8);
        add(complete, RunRule.NINE_ON_ONE_SIDE, sideRun >= 9);
        add(complete, RunRule.SIX_RISING_OR_FALLING, trendRun >= 6);
        add(complete, RunRule.FOURTEEN_UP_AND_DOWN, swingRun >= 14);
        add(complete, RunRule.FIFTEEN_NEAR_CENTRE, nearRun >= 15);
        add(complete, RunRule.EIGHT_AWAY_FROM_CENTRE, awayRun >= 8 && sideRun < 8);
        return complete;
    }

    private void count(double z, double before, double beforeThat) {
        double side = Math.signum(z);
        if (side == 0) {
            sideRun = 0;
        } else {
            sideRun = seen > 0 && side == Math.signum(before) ? sideRun + 1 : 1;
        }
        nearRun = Math.abs(z) < 1 ? nearRun + 1 : 0;
        awayRun = Math.abs(z) > 1 ? awayRun + 1 : 0;
        double direction = seen > 0 ? Math.signum(z - before) : 0;
        double directionBefore = seen > 1 ? Math.signum(before - beforeThat) : 0;
        if (direction == 0) {
            trendRun = 1;
            swingRun = 1;
        } else {
            trendRun = direction == directionBefore ? trendRun + 1 : 2;
            swingRun = direction == -directionBefore ? swingRun + 1 : 2;
        }
    }

    /** Returns how many of the last points lie beyond so many sigma on the side of the newest. */
    private int beyond(double z, double sigmas, int window) {
        int count = 0;
        for (int back = 1; back <= Math.min(window, seen); back++) {
            if (Math.signum(z) * recent[(seen - back) % MEMORY] > sigmas) {
                count++;
            }
        }
        return count;
    }

    private static void add(EnumSet<RunRule> complete, RunRule rule, boolean met) {
        if (met) {
            complete.add(rule);
        }
    }
}
