// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.report.internal.Evidence.Taken;

/**
 * The readings that a handout explains: a main one, and others that differ from it in one thing.
 *
 * @param main steady tone, near 4 ohm, at the highest supply voltage
 * @param evidence where the others are looked for
 */
record Example(Taken main, Evidence evidence) {
    private static final double USUAL_LOAD_OHMS = 4;
    private static final double SAME_RATIO = 0.02;

    /** Returns the readings to explain; empty when none reached its end point. */
    static Optional<Example> in(Evidence evidence) {
        return evidence.standing(PowerKind.CONTINUOUS).stream()
                .filter(Example::reached)
                .min(Comparator.comparing((Taken taken) -> taken.reading().mode())
                        .thenComparingDouble(
                                taken -> Math.abs(Math.log(taken.reading().nominalLoadOhms() / USUAL_LOAD_OHMS)))
                        .thenComparing(
                                Comparator.comparingDouble(Taken::aimedVolts).reversed()))
                .map(main -> new Example(main, evidence));
    }

    private static boolean reached(Taken taken) {
        return taken.reading().channels().stream()
                .allMatch(channel -> Evidence.reached(channel) && channel.powerWatts() > 0);
    }

    /** Returns the channel of the main reading that the sheet states. */
    ChannelReading channel() {
        return main.reading().weakestChannel();
    }

    double loadOhms() {
        return main.reading().nominalLoadOhms();
    }

    /** Returns the same at the lowest supply voltage, when that is lower. */
    Optional<Taken> lowerSupply() {
        return like(PowerKind.CONTINUOUS, main::sameLoad)
                .filter(taken -> taken.aimedVolts() < main.aimedVolts())
                .min(Comparator.comparingDouble(Taken::aimedVolts));
    }

    /** Returns the same into half the load. */
    Optional<Taken> halfLoad() {
        return like(
                        PowerKind.CONTINUOUS,
                        taken -> sameSupply(taken)
                                && taken.reading().mode() == main.reading().mode()
                                && isLoad(taken, loadOhms() / 2))
                .findFirst();
    }

    /** Returns the bridged reading into the main load, at the same supply voltage. */
    Optional<Taken> bridged() {
        return main.reading().mode() == Mode.BRIDGED
                ? Optional.empty()
                : like(
                                PowerKind.CONTINUOUS,
                                taken -> sameSupply(taken)
                                        && taken.reading().mode() == Mode.BRIDGED
                                        && isLoad(taken, loadOhms()))
                        .findFirst();
    }

    /** Returns the tone burst under the same conditions. */
    Optional<Taken> burst() {
        return like(PowerKind.BURST, main::sameCell).findFirst();
    }

    private Stream<Taken> like(PowerKind kind, Predicate<Taken> also) {
        EndPoint endPoint = main.reading().endPoint();
        List<Taken> all = evidence.standing(kind);
        return all.stream()
                .filter(taken -> taken.reading().endPoint().equals(endPoint))
                .filter(Example::reached)
                .filter(also);
    }

    private boolean sameSupply(Taken taken) {
        return Double.compare(taken.aimedVolts(), main.aimedVolts()) == 0;
    }

    private static boolean isLoad(Taken taken, double ohms) {
        return Math.abs(taken.reading().nominalLoadOhms() / ohms - 1) < SAME_RATIO;
    }
}
