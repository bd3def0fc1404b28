// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;

/** Whether figures are what was announced. */
public final class FigureFaults {
    private final Map<String, FigureInfo> announced;

    public FigureFaults(List<FigureInfo> announced) {
        this.announced = announced.stream().collect(Collectors.toMap(FigureInfo::id, Function.identity()));
    }

    /** Returns what is wrong with which figures there are. */
    public List<String> unannounced(List<Figure> figures) {
        List<String> faults = new ArrayList<>();
        Set<List<String>> seen = new HashSet<>();
        for (Figure figure : figures) {
            if (!announced.containsKey(figure.id())) {
                faults.add("The figure \"" + figure.id() + "\" was not announced.");
            } else if (announced.get(figure.id()).perChannel()
                    && figure.channel().isBlank()) {
                faults.add("The figure \"" + figure.id() + "\" does not say for which channel it is.");
            }
            if (!seen.add(List.of(figure.id(), figure.channel(), figure.at()))) {
                faults.add("The figure \"" + figure.id() + "\" is there twice for the same channel and place.");
            }
        }
        return faults;
    }

    /** Returns which figures are not in the unit that was announced. */
    public List<String> otherUnits(List<Figure> figures) {
        List<String> faults = new ArrayList<>();
        for (Figure figure : figures) {
            FigureInfo info = announced.get(figure.id());
            if (info != null && info.unit() != figure.unit()) {
                faults.add("The figure \"" + figure.id() + "\" is in \""
                        + figure.unit().symbol() + "\", but was announced in \""
                        + info.unit().symbol() + "\".");
            }
        }
        return faults;
    }
}
