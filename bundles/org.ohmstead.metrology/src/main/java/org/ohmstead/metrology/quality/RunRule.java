// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.Set;

/**
 * Patterns on a control chart that chance alone seldom makes. Sigma is the distance of the control limits from the
 * centre line over three. The first four are the zone tests of the Statistical Quality Control Handbook (Western
 * Electric, 1956); the eight of L. S. Nelson, Journal of Quality Technology 16 (1984), pages 237 to 239, ask for nine
 * on one side instead of eight and add four more.
 */
public enum RunRule {
    /** One point beyond three sigma. */
    BEYOND_LIMITS(1, "one point lies outside the control limits", "something changed suddenly for this reading"),
    /** Two of three successive points beyond two sigma on the same side, the last of them among these. */
    TWO_OF_THREE_FAR_OUT(
            3, "two of three in a row lie beyond two sigma on the same side", "the level has probably shifted"),
    /** Four of five successive points beyond one sigma on the same side, the last of them among these. */
    FOUR_OF_FIVE_OFF_CENTRE(
            5, "four of five in a row lie beyond one sigma on the same side", "the level has probably shifted"),
    /** Eight successive points on the same side of the centre line. */
    EIGHT_ON_ONE_SIDE(8, "eight in a row lie on the same side of the centre line", "the level has probably shifted"),
    /** Nine successive points on the same side of the centre line. */
    NINE_ON_ONE_SIDE(9, "nine in a row lie on the same side of the centre line", "the level has probably shifted"),
    /** Six successive points, each above the one before, or each below it. */
    SIX_RISING_OR_FALLING(6, "six in a row rise or fall steadily", "the bench is probably drifting"),
    /** Fourteen successive points that go up and down in turn. */
    FOURTEEN_UP_AND_DOWN(
            14, "fourteen in a row go up and down in turn", "two different conditions are probably taking turns"),
    /** Fifteen successive points within one sigma of the centre line. */
    FIFTEEN_NEAR_CENTRE(
            15, "fifteen in a row lie within one sigma of the centre line", "the limits are probably too wide"),
    /** Eight successive points, some above and some below, none within one sigma of the centre line. */
    EIGHT_AWAY_FROM_CENTRE(
            8,
            "eight in a row avoid the middle third of the chart on both sides",
            "two different conditions are probably mixed");

    /** The four zone tests of the Statistical Quality Control Handbook of 1956. */
    public static final Set<RunRule> ZONE_TESTS =
            Set.of(BEYOND_LIMITS, TWO_OF_THREE_FAR_OUT, FOUR_OF_FIVE_OFF_CENTRE, EIGHT_ON_ONE_SIDE);

    /** The eight tests of Nelson's paper of 1984. */
    public static final Set<RunRule> EIGHT_TESTS = Set.of(
            BEYOND_LIMITS,
            NINE_ON_ONE_SIDE,
            SIX_RISING_OR_FALLING,
            FOURTEEN_UP_AND_DOWN,
            TWO_OF_THREE_FAR_OUT,
            FOUR_OF_FIVE_OFF_CENTRE,
            FIFTEEN_NEAR_CENTRE,
            EIGHT_AWAY_FROM_CENTRE);

    private final int span;
    private final String pattern;
    private final String meaning;

    RunRule(int span, String pattern, String meaning) {
        this.span = span;
        this.pattern = pattern;
        this.meaning = meaning;
    }

    /** Returns how many successive points the pattern looks at. */
    public int span() {
        return span;
    }

    /** Returns the pattern as a clause, e.g. "six in a row rise or fall steadily". */
    public String pattern() {
        return pattern;
    }

    /** Returns what the pattern usually means as a clause, e.g. "the bench is probably drifting". */
    public String meaning() {
        return meaning;
    }
}
