// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Step;
import org.ohmstead.thermal.plan.Before;

/** Says when a plan's order is not the one that spares the amplifier: stereo before bridged, lower supply volts first. */
final class ForecastOrder {
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
        return Optional.of("\"" + id(forecast, first.later()) + "\" runs ahead of \"" + id(forecast, first.earlier())
                + "\"; better " + reason(forecast, first) + " first."
                + (steps > 1 ? " So do " + (steps - 1) + " more." : ""));
    }

    private static String id(Forecast forecast, int job) {
        return forecast.plan().steps().get(job).jobId();
    }

    private static String reason(Forecast forecast, Before pair) {
        boolean bridged =
                mode(forecast, pair.later()) == Mode.BRIDGED && mode(forecast, pair.earlier()) != Mode.BRIDGED;
        return bridged ? "what is not bridged" : "the lower supply volts of a load";
    }

    private static Mode mode(Forecast forecast, int job) {
        return forecast.project().step(id(forecast, job)).map(Step::mode).orElse(Mode.STEREO);
    }
}
