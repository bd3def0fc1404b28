// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.metrology.Contribution;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.UncertaintyBudget;
import org.ohmstead.units.text.Messages;

/**
 * The power of a subject at the common supply voltage and load: that of its weakest channel.
 *
 * @param subject which
 * @param channel which channel is the weakest
 * @param own the power in watts, with what its readings' own scatter and the curve through them make uncertain
 * @param shared what else is uncertain
 * @param origin how it was found
 * @param readings how many readings it rests on
 */
public record SubjectPower(
        Subject subject, String channel, Estimate own, List<SharedPart> shared, Origin origin, int readings) {
    private static final Messages TEXTS = Messages.of(SubjectPower.class);

    /** How a power was found. */
    public enum Origin {
        /** Readings lie at the voltage, within their uncertainty. */
        DIRECT,
        /** From the curve through readings at voltages on both sides. */
        CURVE
    }

    /** Copies the list. */
    public SubjectPower {
        shared = List.copyOf(shared);
    }

    /** Returns the power in watts with its whole uncertainty. */
    public Estimate watts() {
        List<Contribution> lines = new ArrayList<>();
        lines.add(Contribution.of("own", 1, own));
        for (int i = 0; i < shared.size(); i++) {
            lines.add(new Contribution("shared " + i, own.value(), shared.get(i).relative(), Double.POSITIVE_INFINITY));
        }
        return new UncertaintyBudget(own.value(), lines, List.of()).combined();
    }

    /** Returns how it was found in a whole sentence. */
    public String sentence() {
        return TEXTS.text(
                "power." + origin.name() + (readings == 1 ? ".one" : ".many"),
                subject.name(),
                channel,
                Integer.toString(readings));
    }
}
