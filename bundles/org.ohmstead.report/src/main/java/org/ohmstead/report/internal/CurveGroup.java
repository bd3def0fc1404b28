// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.PowerPoint;
import org.ohmstead.curves.SquareLawFallback;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;

/**
 * The curves that belong into one chart: one for each load, that of the weakest channel.
 *
 * @param kind steady tone or burst
 * @param mode how the channels met the load
 * @param endPoint what ended the search for power
 * @param frequencyHz of the tone
 * @param curves highest load first
 * @param channels how many channels there are to be the weakest of
 */
record CurveGroup(
        PowerKind kind, Mode mode, EndPoint endPoint, double frequencyHz, List<LoadCurve> curves, long channels) {
    private record Key(PowerKind kind, Mode mode, EndPoint endPoint, double frequencyHz) {}

    static List<CurveGroup> of(List<LoadCurve> curves) {
        Map<Key, List<LoadCurve>> groups = new LinkedHashMap<>();
        for (LoadCurve curve : curves) {
            Key key = new Key(curve.kind(), curve.mode(), curve.endPoint(), curve.frequencyHz());
            groups.computeIfAbsent(key, unused -> new ArrayList<>()).add(curve);
        }
        return groups.entrySet().stream()
                .map(group -> {
                    Key key = group.getKey();
                    long channels = group.getValue().stream()
                            .map(LoadCurve::channel)
                            .distinct()
                            .count();
                    return new CurveGroup(
                            key.kind(),
                            key.mode(),
                            key.endPoint(),
                            key.frequencyHz(),
                            weakest(group.getValue()),
                            channels);
                })
                .toList();
    }

    private static List<LoadCurve> weakest(List<LoadCurve> curves) {
        Map<Double, LoadCurve> byLoad = new LinkedHashMap<>();
        for (LoadCurve curve : curves) {
            byLoad.merge(
                    curve.nominalLoadOhms(),
                    curve,
                    (one, other) -> middlePower(one) <= middlePower(other) ? one : other);
        }
        return byLoad.values().stream()
                .sorted(Comparator.comparingDouble(LoadCurve::nominalLoadOhms).reversed())
                .toList();
    }

    private static double middlePower(LoadCurve curve) {
        return curve.powerAt((lowestVolts(curve) + highestVolts(curve)) / 2).value();
    }

    static double lowestVolts(LoadCurve curve) {
        return curve.points().stream()
                .mapToDouble(PowerPoint::supplyVolts)
                .min()
                .orElseThrow(() -> new IllegalArgumentException("curve has no points; it needs at least one"));
    }

    static double highestVolts(LoadCurve curve) {
        return curve.points().stream()
                .mapToDouble(PowerPoint::supplyVolts)
                .max()
                .orElseThrow(() -> new IllegalArgumentException("curve has no points; it needs at least one"));
    }

    /** Returns whether some load was measured at more than one supply voltage, so that there is a line to draw. */
    boolean spansVoltages() {
        return curves.stream().anyMatch(curve -> !(curve.curve() instanceof SquareLawFallback));
    }

    String title(Speech speech) {
        return speech.text(
                "curve.title", speech.of(kind), speech.within(mode), speech.of(endPoint), speech.hertz(frequencyHz));
    }
}
