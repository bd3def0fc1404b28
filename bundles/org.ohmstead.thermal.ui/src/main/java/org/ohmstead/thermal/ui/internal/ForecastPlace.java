// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.plan.WatchedPlace;
import org.ohmstead.units.text.Messages;

/**
 * A place whose temperature is forecast: all points of the model that stand for it, one for each end of what is known only as a range.
 *
 * @param kind what is hot there
 * @param name what a person calls it, such as "case of the amplifier"
 * @param points numbers of the model's points, those with a limit first
 * @param likely number of the point with the middle of everything; empty when there is none
 * @param limitCelsius the hottest that it may get; empty when nothing says
 */
record ForecastPlace(Kind kind, String name, List<Integer> points, OptionalInt likely, OptionalDouble limitCelsius) {
    private static final Messages TEXTS = Messages.of(ForecastPlace.class);

    /** What is hot at a place, in the order of the table's columns. */
    enum Kind {
        CASE,
        DEVICE,
        LOAD,
        CABLE;

        String title() {
            return TEXTS.text("place." + name());
        }
    }

    /** Returns the places of a model in its order. */
    static List<ForecastPlace> of(HeatModel model) {
        return WatchedPlace.of(model).stream().map(place -> of(model, place)).toList();
    }

    private static ForecastPlace of(HeatModel model, WatchedPlace place) {
        List<Integer> sorted = new ArrayList<>(place.points());
        sorted.sort((one, other) ->
                Boolean.compare(limit(model, one).isEmpty(), limit(model, other).isEmpty()));
        return new ForecastPlace(
                kind(place.key()), place.name(), List.copyOf(sorted), place.likely(), place.limitCelsius());
    }

    private static OptionalDouble limit(HeatModel model, int point) {
        return model.points().get(point).limitCelsius();
    }

    private static Kind kind(String key) {
        return switch (key) {
            case "case" -> Kind.CASE;
            case "device" -> Kind.DEVICE;
            case "cable" -> Kind.CABLE;
            default -> Kind.LOAD;
        };
    }

    /** Returns the name with a capital letter, for legends. */
    String heading() {
        return Character.toUpperCase(name.charAt(0)) + name.substring(1);
    }

    /** Returns the points whose limit is kept: all of them when none has a limit. */
    List<Integer> watched(HeatModel model) {
        List<Integer> limited =
                points.stream().filter(point -> limit(model, point).isPresent()).toList();
        return limited.isEmpty() ? points : limited;
    }
}
