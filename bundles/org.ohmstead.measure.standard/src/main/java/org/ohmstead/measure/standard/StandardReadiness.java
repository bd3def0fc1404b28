// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;
import org.ohmstead.units.text.Messages;

/** What the built-in measurements need of a subject. */
final class StandardReadiness {
    private static final Messages TEXTS = Messages.of(StandardReadiness.class);

    private StandardReadiness() {}

    /** A load with a resistance for each channel. */
    static Readiness forLoad(Subject subject) {
        int needed = subject.channelCount();
        int there = subject.load().branches().size();
        if (there < needed) {
            return new Readiness.NotYet(
                    TEXTS.text(
                            "readiness.fewResistances",
                            subject.load().id(),
                            String.valueOf(there),
                            String.valueOf(needed)),
                    TEXTS.text("readiness.fewResistances.remedy"));
        }
        return new Readiness.Ready();
    }

    /** The same, and the meters that an uncertainty of power needs. */
    static Readiness forPower(Subject subject) {
        if (subject.project().bench().meterFor(MeterQuantity.OUTPUT_VOLTS).isEmpty()) {
            return missing("readiness.noOutputMeter");
        }
        boolean supplyCounts = subject.project().amplifier().supplyType() != SupplyType.REGULATED;
        if (supplyCounts
                && subject.project()
                        .bench()
                        .meterFor(MeterQuantity.SUPPLY_VOLTS)
                        .isEmpty()) {
            return missing("readiness.noSupplyMeter");
        }
        return forLoad(subject);
    }

    /** Two channels at least, measured at once. */
    static Readiness forSeveralChannels(Subject subject) {
        if (subject.step().mode() != Mode.STEREO
                || subject.project().amplifier().channelCount() < 2) {
            return new Readiness.NotApplicable(TEXTS.text("readiness.oneChannel"));
        }
        return forLoad(subject);
    }

    private static Readiness missing(String key) {
        return new Readiness.NotYet(TEXTS.text(key), TEXTS.text("readiness.noMeter.remedy"));
    }
}
