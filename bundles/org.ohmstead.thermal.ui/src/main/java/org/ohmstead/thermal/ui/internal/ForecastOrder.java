// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Step;
import org.ohmstead.thermal.plan.Before;
import org.ohmstead.units.text.Messages;

/** Says when a plan's order is not the one that spares the amplifier: stereo before bridged, lower supply volts first. */
final class ForecastOrder {
    private static final Messages TEXTS = Messages.of(ForecastOrder.class);

    private ForecastOrder() {}

    /** Returns what is to be said of the order; empty when all is well. */
    static Optional<String> sentence(Forecast forecast) {
        List<Before> broken = forecast.plan()
                .task()
                .map(task -> task.precedence().stream()
                        .filter(pair -> pair.earlier() > pair.later())
                        .toList())
                .orElse(List.of());
        if (broken.isEmpty()) {
            return Optional.empty();
        }
        long steps = broken.stream().mapToInt(Before::later).distinct().count();
        Before first = broken.get(0);
        String later = id(forecast, first.later());
        String earlier = id(forecast, first.earlier());
        String reason = bridgedFirst(forecast, first) ? "order.bridged" : "order.volts";
        return Optional.of(
                steps > 1
                        ? TEXTS.text(reason + "More", later, earlier, Long.toString(steps - 1))
                        : TEXTS.text(reason, later, earlier));
    }

    private static String id(Forecast forecast, int job) {
        return forecast.plan().steps().get(job).jobId();
    }

    private static boolean bridgedFirst(Forecast forecast, Before pair) {
        return mode(forecast, pair.later()) == Mode.BRIDGED && mode(forecast, pair.earlier()) != Mode.BRIDGED;
    }

    private static Mode mode(Forecast forecast, int job) {
        return forecast.project().step(id(forecast, job)).map(Step::mode).orElse(Mode.STEREO);
    }
}
