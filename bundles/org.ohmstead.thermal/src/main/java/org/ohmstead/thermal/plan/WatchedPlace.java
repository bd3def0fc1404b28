// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;

/**
 * A place of a forecast. A body of which a quantity is known only as a range stands in the model several times, once for each end with a
 * limit and once for the middle without; all of them are one place.
 *
 * @param key short name: the points' id without the ending that tells which end of a range it is
 * @param name what a person calls it
 * @param limitCelsius the hottest that it may get; empty when nothing says
 * @param points numbers of its points in the model
 * @param likely number of the point with the middle of everything; empty when there is none
 */
public record WatchedPlace(
        String key, String name, OptionalDouble limitCelsius, List<Integer> points, OptionalInt likely) {
    private static final String LIKELY = ".likely";
    private static final List<String> ENDINGS = List.of(".least", ".middle", ".most", LIKELY);

    public WatchedPlace {
        Require.named(key, "key");
        Require.named(name, "name");
        Require.present(limitCelsius, "limitCelsius");
        points = List.copyOf(points);
        Require.present(likely, "likely");
    }

    /** Returns the places of a model in its order. */
    public static List<WatchedPlace> of(HeatModel model) {
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        for (int point = 0; point < model.points().size(); point++) {
            groups.computeIfAbsent(key(model.points().get(point).id()), any -> new ArrayList<>())
                    .add(point);
        }
        List<WatchedPlace> found = new ArrayList<>();
        groups.forEach((key, points) -> found.add(new WatchedPlace(
                key,
                model.points().get(points.get(0)).name(),
                points.stream()
                        .map(point -> model.points().get(point))
                        .map(HeatPoint::limitCelsius)
                        .filter(OptionalDouble::isPresent)
                        .findFirst()
                        .orElse(OptionalDouble.empty()),
                points,
                points.stream()
                        .mapToInt(Integer::intValue)
                        .filter(point -> model.points().get(point).id().endsWith(LIKELY))
                        .findFirst())));
        return List.copyOf(found);
    }

    /** Returns the id of a point without the ending that tells which end of a range it is. */
    public static String key(String pointId) {
        return ENDINGS.stream()
                .filter(pointId::endsWith)
                .map(ending -> pointId.substring(0, pointId.length() - ending.length()))
                .findFirst()
                .orElse(pointId);
    }

    /** Returns the least and the most of its points, given the temperatures of all points of the model in degrees Celsius. */
    public Range celsius(List<Double> all) {
        double low = points.stream().mapToDouble(all::get).min().orElseThrow();
        double high = points.stream().mapToDouble(all::get).max().orElseThrow();
        return new Range(low, high);
    }

    /** Returns how many kelvins it stays below its limit, given the temperatures of all points; empty without a limit. */
    public OptionalDouble roomKelvin(List<Double> all) {
        return limitCelsius.isPresent()
                ? OptionalDouble.of(limitCelsius.getAsDouble() - celsius(all).high())
                : OptionalDouble.empty();
    }

    /** Returns the place with the least room below its limit; where no place has a limit the hottest one. */
    public static WatchedPlace tightest(List<WatchedPlace> places, List<Double> all) {
        WatchedPlace tightest = places.get(0);
        for (WatchedPlace place : places) {
            if (place.rank(all) < tightest.rank(all)) {
                tightest = place;
            }
        }
        return tightest;
    }

    private double rank(List<Double> all) {
        // A place without a limit comes after every one with a limit.
        return roomKelvin(all).orElse(1e6 - celsius(all).high());
    }
}
