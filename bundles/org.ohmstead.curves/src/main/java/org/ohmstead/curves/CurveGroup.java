// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;

/**
 * The curves that belong into one chart: those that differ in load and channel only.
 *
 * @param kind steady tone or burst
 * @param mode how the channels met the load
 * @param endPoint what ended the search for power
 * @param frequencyHz of the tone
 * @param curves of each load and channel: highest load first, then by channel; at least one
 */
public record CurveGroup(PowerKind kind, Mode mode, EndPoint endPoint, double frequencyHz, List<LoadCurve> curves) {

    /** Checks that there is a curve, and copies the list. */
    public CurveGroup {
        curves = List.copyOf(curves);
        if (curves.isEmpty()) {
            throw new IllegalArgumentException("curves is empty; a group needs at least one");
        }
    }

    private record Key(PowerKind kind, Mode mode, EndPoint endPoint, double frequencyHz) {}

    /** Returns the curves in groups; the groups in the order in which their first curves come. */
    public static List<CurveGroup> of(List<LoadCurve> curves) {
        Map<Key, List<LoadCurve>> groups = new LinkedHashMap<>();
        for (LoadCurve curve : curves) {
            Key key = new Key(curve.kind(), curve.mode(), curve.endPoint(), curve.frequencyHz());
            groups.computeIfAbsent(key, unused -> new ArrayList<>()).add(curve);
        }
        return groups.entrySet().stream()
                .map(group -> new CurveGroup(
                        group.getKey().kind(),
                        group.getKey().mode(),
                        group.getKey().endPoint(),
                        group.getKey().frequencyHz(),
                        sorted(group.getValue())))
                .toList();
    }

    private static List<LoadCurve> sorted(List<LoadCurve> curves) {
        return curves.stream()
                .sorted(Comparator.comparing(LoadCurve::nominalLoadOhms, Comparator.reverseOrder())
                        .thenComparing(LoadCurve::channel))
                .toList();
    }

    /** Returns one curve for each load, highest load first: that of the channel with the least power in the middle of its readings. */
    public List<LoadCurve> weakest() {
        Map<Double, LoadCurve> byLoad = new LinkedHashMap<>();
        for (LoadCurve curve : curves) {
            byLoad.merge(
                    curve.nominalLoadOhms(),
                    curve,
                    (one, other) -> middleWatts(one) <= middleWatts(other) ? one : other);
        }
        return List.copyOf(byLoad.values());
    }

    /** Returns the names of the channels, sorted, each once. */
    public List<String> channels() {
        return curves.stream().map(LoadCurve::channel).distinct().sorted().toList();
    }

    /** Returns the nominal loads in ohms, the highest first, each once. */
    public List<Double> loadsOhms() {
        return curves.stream().map(LoadCurve::nominalLoadOhms).distinct().toList();
    }

    private static double middleWatts(LoadCurve curve) {
        PowerCurve fitted = curve.curve();
        return curve.powerAt((fitted.lowestSupplyVolts() + fitted.highestSupplyVolts()) / 2)
                .value();
    }
}
