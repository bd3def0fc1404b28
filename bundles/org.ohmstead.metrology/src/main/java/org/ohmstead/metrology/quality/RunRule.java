// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.Set;
import org.ohmstead.units.text.Messages;

/**
 * Patterns on a control chart that chance alone seldom makes. Sigma is the distance of the control limits from the
 * centre line over three. The first four are the zone tests of the Statistical Quality Control Handbook (Western
 * Electric, 1956); the eight of L. S. Nelson, Journal of Quality Technology 16 (1984), pages 237 to 239, ask for nine
 * on one side instead of eight and add four more.
 */
public enum RunRule {
    /** One point beyond three sigma. */
    BEYOND_LIMITS(1),
    /** Two of three successive points beyond two sigma on the same side, the last of them among these. */
    TWO_OF_THREE_FAR_OUT(3),
    /** Four of five successive points beyond one sigma on the same side, the last of them among these. */
    FOUR_OF_FIVE_OFF_CENTRE(5),
    /** Eight successive points on the same side of the centre line. */
    EIGHT_ON_ONE_SIDE(8),
    /** Nine successive points on the same side of the centre line. */
    NINE_ON_ONE_SIDE(9),
    /** Six successive points, each above the one before, or each below it. */
    SIX_RISING_OR_FALLING(6),
    /** Fourteen successive points that go up and down in turn. */
    FOURTEEN_UP_AND_DOWN(14),
    /** Fifteen successive points within one sigma of the centre line. */
    FIFTEEN_NEAR_CENTRE(15),
    /** Eight successive points, some above and some below, none within one sigma of the centre line. */
    EIGHT_AWAY_FROM_CENTRE(8);

    private static final Messages TEXTS = Messages.of(RunRule.class);

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

    RunRule(int span) {
        this.span = span;
    }

    /** Returns how many successive points the pattern looks at. */
    public int span() {
        return span;
    }

    /** Returns the pattern as a clause, e.g. "six in a row rise or fall steadily". */
    public String pattern() {
        return TEXTS.text("rule." + name());
    }

    /** Returns what the pattern usually means as a clause, e.g. "the bench is probably drifting". */
    public String meaning() {
        return TEXTS.text("rule." + name() + ".meaning");
    }

    /** Returns what is seen with what it means, as a whole sentence. */
    public String sentence() {
        String sentence = TEXTS.text("rule.sentence", pattern(), meaning());
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
