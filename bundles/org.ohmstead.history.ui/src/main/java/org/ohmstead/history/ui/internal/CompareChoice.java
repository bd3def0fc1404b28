// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.history.HistoryException;
import org.ohmstead.history.Period;
import org.ohmstead.history.Trend;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.workbench.look.Numbers;

/**
 * What the user chose to compare, and under what; kept from one session of the workbench to the next.
 *
 * @param items what is compared, 1 to {@link #MOST}
 * @param supplyVolts direct volts at the amplifier's terminals, above 0
 * @param loadOhms the load, above 0
 * @param mode how the channels meet it
 * @param kind steady tone or burst
 * @param indexFile table of a price index
 * @param basePeriod period to whose money prices are brought; may be empty
 * @param figureId whose trend is shown
 */
record CompareChoice(
        List<CompareItem> items,
        double supplyVolts,
        double loadOhms,
        Mode mode,
        PowerKind kind,
        Optional<Path> indexFile,
        String basePeriod,
        String figureId) {
    /** How many can be compared. */
    static final int MOST = 10;

    /** What is chosen at first. */
    static final CompareChoice USUAL = new CompareChoice(
            List.of(CompareItem.OPEN), 14.4, 4, Mode.STEREO, PowerKind.CONTINUOUS, Optional.empty(), "", Trend.POWER);

    private static final String ITEM = "item";

    CompareChoice {
        items = List.copyOf(items);
        if (items.isEmpty() || items.size() > MOST) {
            throw new IllegalArgumentException("items has " + items.size() + " entries; it must have 1 to " + MOST);
        }
        positive(supplyVolts, "supplyVolts");
        positive(loadOhms, "loadOhms");
    }

    private static void positive(double value, String name) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
    }

    CompareChoice withItems(List<CompareItem> newItems) {
        return new CompareChoice(newItems, supplyVolts, loadOhms, mode, kind, indexFile, basePeriod, figureId);
    }

    CompareChoice withSupplyVolts(double newSupplyVolts) {
        return new CompareChoice(items, newSupplyVolts, loadOhms, mode, kind, indexFile, basePeriod, figureId);
    }

    CompareChoice withLoadOhms(double newLoadOhms) {
        return new CompareChoice(items, supplyVolts, newLoadOhms, mode, kind, indexFile, basePeriod, figureId);
    }

    CompareChoice withMode(Mode newMode) {
        return new CompareChoice(items, supplyVolts, loadOhms, newMode, kind, indexFile, basePeriod, figureId);
    }

    CompareChoice withKind(PowerKind newKind) {
        return new CompareChoice(items, supplyVolts, loadOhms, mode, newKind, indexFile, basePeriod, figureId);
    }

    CompareChoice withIndex(Optional<Path> newIndexFile, String newBasePeriod) {
        return new CompareChoice(items, supplyVolts, loadOhms, mode, kind, newIndexFile, newBasePeriod, figureId);
    }

    CompareChoice withFigureId(String newFigureId) {
        return new CompareChoice(items, supplyVolts, loadOhms, mode, kind, indexFile, basePeriod, newFigureId);
    }

    /** Returns it as lines of a name and its values with tabs between; a file whose path has such signs in it is left out. */
    String toText() {
        StringBuilder text = new StringBuilder();
        for (CompareItem item : items) {
            String folder = item.folder().map(Path::toString).orElse("");
            if (isPlain(folder)) {
                line(text, ITEM, folder, item.periodText());
            }
        }
        line(text, "supplyVolts", Numbers.exact(supplyVolts));
        line(text, "loadOhms", Numbers.exact(loadOhms));
        line(text, "mode", mode.name());
        line(text, "kind", kind.name());
        indexFile.map(Path::toString).filter(CompareChoice::isPlain).ifPresent(file -> line(text, "index", file));
        line(text, "base", basePeriod);
        line(text, "figure", figureId);
        return text.toString();
    }

    private static boolean isPlain(String path) {
        return path.chars().noneMatch(each -> each == '\t' || each == '\n' || each == '\r');
    }

    private static void line(StringBuilder text, String... cells) {
        text.append(String.join("\t", cells)).append('\n');
    }

    /** Reads what {@link #toText} wrote; what cannot be read is as usual. */
    static CompareChoice parse(String text) {
        List<CompareItem> items = new ArrayList<>();
        Map<String, String> values = new HashMap<>();
        for (String line : text.split("\n")) {
            String[] cells = line.split("\t", -1);
            if (cells[0].equals(ITEM) && cells.length > 2) {
                item(cells[1], cells[2]).filter(item -> items.size() < MOST).ifPresent(items::add);
            } else if (cells.length > 1) {
                values.put(cells[0], cells[1]);
            }
        }
        return new CompareChoice(
                items.isEmpty() ? USUAL.items : items,
                number(values.get("supplyVolts"), USUAL.supplyVolts),
                number(values.get("loadOhms"), USUAL.loadOhms),
                named(Mode.values(), values.get("mode"), USUAL.mode),
                named(PowerKind.values(), values.get("kind"), USUAL.kind),
                path(values.getOrDefault("index", "")),
                values.getOrDefault("base", ""),
                values.getOrDefault("figure", USUAL.figureId));
    }

    private static Optional<CompareItem> item(String folder, String period) {
        Optional<Path> known = path(folder);
        if (known.isEmpty() && !folder.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new CompareItem(known, period.isEmpty() ? Period.ALWAYS : Period.parse(period)));
        } catch (HistoryException unreadable) {
            return Optional.empty();
        }
    }

    private static Optional<Path> path(String text) {
        try {
            return text.isEmpty() ? Optional.empty() : Optional.of(Path.of(text));
        } catch (InvalidPathException ofAnotherSystem) {
            return Optional.empty();
        }
    }

    private static double number(String text, double otherwise) {
        return Optional.ofNullable(text)
                .flatMap(Shown::read)
                .filter(value -> value > 0)
                .orElse(otherwise);
    }

    private static <E extends Enum<E>> E named(E[] all, String name, E otherwise) {
        for (E each : all) {
            if (each.name().equals(name)) {
                return each;
            }
        }
        return otherwise;
    }
}
