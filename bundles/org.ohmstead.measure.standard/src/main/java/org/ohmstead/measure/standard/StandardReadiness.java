// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;

/** What the built-in measurements need of a subject. */
final class StandardReadiness {
    private StandardReadiness() {}

    /** A load with a resistance for each channel. */
    static Readiness forLoad(Subject subject) {
        int needed = subject.channelCount();
        int there = subject.load().branches().size();
        if (there < needed) {
            return new Readiness.NotYet(
                    "The load \"" + subject.load().id() + "\" has " + there + " resistance(s), but " + needed
                            + " channels are measured at once.",
                    "Choose another load, or give it a resistance for each channel.");
        }
        return new Readiness.Ready();
    }

    /** The same, and the meters that an uncertainty of power needs. */
    static Readiness forPower(Subject subject) {
        if (subject.project().bench().meterFor(MeterQuantity.OUTPUT_VOLTS).isEmpty()) {
            return missing("output volts");
        }
        boolean supplyCounts = subject.project().amplifier().supplyType() != SupplyType.REGULATED;
        if (supplyCounts
                && subject.project()
                        .bench()
                        .meterFor(MeterQuantity.SUPPLY_VOLTS)
                        .isEmpty()) {
            return missing("supply volts");
        }
        return forLoad(subject);
    }

    /** Two channels at least, measured at once. */
    static Readiness forSeveralChannels(Subject subject) {
        if (subject.step().mode() != Mode.STEREO
                || subject.project().amplifier().channelCount() < 2) {
            return new Readiness.NotApplicable(
                    "Only one channel is measured at once here, so there is nothing to compare.");
        }
        return forLoad(subject);
    }

    private static Readiness missing(String quantity) {
        return new Readiness.NotYet(
                "The bench lists no meter for " + quantity + ", so no uncertainty can be stated.",
                "Add the instrument with its specification to the project.");
    }
}
