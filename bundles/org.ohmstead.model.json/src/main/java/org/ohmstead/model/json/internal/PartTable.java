// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** Reads resistors from comma-separated values with a header line. */
public final class PartTable {
    private static final Messages TEXTS = Messages.of(PartTable.class);
    private static final Map<String, Unit> NUMBERS = Map.ofEntries(
            Map.entry("ohms", Unit.OHM),
            Map.entry("toleranceRatio", Unit.PERCENT),
            Map.entry("ratedWatts", Unit.WATT),
            Map.entry("ratedToCelsius", Unit.CELSIUS),
            Map.entry("zeroPowerCelsius", Unit.CELSIUS),
            Map.entry("count", Unit.NONE),
            Map.entry("temperatureCoefficientPerKelvin", Unit.NONE),
            Map.entry("inductanceHenries", Unit.HENRY),
            Map.entry("sinkKelvinPerWatt", Unit.KELVIN_PER_WATT),
            Map.entry("elementKelvinPerWatt", Unit.KELVIN_PER_WATT),
            Map.entry("overloadRatio", Unit.NONE),
            Map.entry("durationSeconds", Unit.SECOND));
    private static final List<String> NEEDED =
            List.of("id", "ohms", "toleranceRatio", "ratedWatts", "ratedToCelsius", "zeroPowerCelsius");
    private static final Set<String> WORDS = Set.of("id", "mounting", "measured");

    private final String label;
    private final long line;
    private final Map<String, String> cells;

    private PartTable(String label, long line, Map<String, String> cells) {
        this.label = label;
        this.line = line;
        this.cells = cells;
    }

    /** Returns the parts of a table, in its order. */
    public static List<Part> read(JsonSource source) throws ProjectFileException {
        List<Part> parts = new ArrayList<>();
        try (MappingIterator<String[]> rows = new CsvMapper()
                .readerFor(String[].class)
                .with(CsvParser.Feature.WRAP_AS_ARRAY)
                .with(CsvParser.Feature.TRIM_SPACES)
                .readValues(source.text())) {
            List<String> header = List.of();
            while (rows.hasNextValue()) {
                String[] row = rows.nextValue();
                long line = rows.getCurrentLocation().getLineNr() - 1L;
                if (Arrays.stream(row).allMatch(String::isBlank)) {
                    continue;
                }
                if (header.isEmpty()) {
                    header = header(source.label(), row);
                } else {
                    parts.add(row(source.label(), line, header, row).part());
                }
            }
        } catch (IOException broken) {
            throw new ProjectFileException(
                    source.label(), TEXTS.text("table.broken", source.label(), broken.getMessage()), broken);
        }
        return parts;
    }

    private static List<String> header(String label, String[] row) throws ProjectFileException {
        List<String> names = Arrays.asList(row);
        for (String name : names) {
            if (!NUMBERS.containsKey(name) && !WORDS.contains(name)) {
                throw new ProjectFileException(label, TEXTS.text("table.unknownColumn", label, name, allowed()), null);
            }
        }
        for (String name : NEEDED) {
            if (!names.contains(name)) {
                throw new ProjectFileException(
                        label, TEXTS.text("table.missingColumn", label, name, String.join(", ", NEEDED)), null);
            }
        }
        return names;
    }

    private static String allowed() {
        return Stream.concat(WORDS.stream(), NUMBERS.keySet().stream()).sorted().collect(Collectors.joining(", "));
    }

    private static PartTable row(String label, long line, List<String> header, String[] row)
            throws ProjectFileException {
        if (row.length > header.size()) {
            throw new ProjectFileException(
                    label,
                    TEXTS.text(
                            "table.longRow",
                            label,
                            String.valueOf(line),
                            String.valueOf(row.length),
                            String.valueOf(header.size())),
                    null);
        }
        Map<String, String> cells = new HashMap<>();
        for (int i = 0; i < row.length; i++) {
            cells.put(header.get(i), row[i].strip());
        }
        return new PartTable(label, line, cells);
    }

    private Part part() throws ProjectFileException {
        String id = cells.getOrDefault("id", "");
        double ohms = needed("ohms");
        double tolerance = needed("toleranceRatio");
        double ratedWatts = needed("ratedWatts");
        double ratedTo = needed("ratedToCelsius");
        double zeroPower = needed("zeroPowerCelsius");
        double count = optional("count").orElse(1);
        if (count != Math.rint(count)) {
            throw fault("count", TEXTS.text("table.notWhole", String.valueOf(count)));
        }
        Mounting mounting = mounting();
        PartTraits traits = traits();
        return build(
                () -> new Part(id, ohms, tolerance, ratedWatts, ratedTo, zeroPower, mounting, (int) count, traits));
    }

    private PartTraits traits() throws ProjectFileException {
        boolean measured = measured();
        OptionalDouble coefficient = optional("temperatureCoefficientPerKelvin");
        OptionalDouble inductance = optional("inductanceHenries");
        OptionalDouble sink = optional("sinkKelvinPerWatt");
        OptionalDouble element = optional("elementKelvinPerWatt");
        OptionalDouble overload = optional("overloadRatio");
        OptionalDouble duration = optional("durationSeconds");
        if (overload.isPresent() != duration.isPresent()) {
            throw fault(overload.isPresent() ? "durationSeconds" : "overloadRatio", TEXTS.text("table.halfPulse"));
        }
        return build(() -> new PartTraits(
                measured,
                coefficient,
                inductance,
                sink,
                element,
                overload.isPresent()
                        ? Optional.of(new PulseRule(overload.getAsDouble(), duration.getAsDouble()))
                        : Optional.empty()));
    }

    private Mounting mounting() throws ProjectFileException {
        String word = cells.getOrDefault("mounting", "");
        if (word.isEmpty()) {
            return Mounting.FREE_AIR;
        }
        for (Mounting mounting : Mounting.values()) {
            if (EnumNames.of(mounting).equals(word)) {
                return mounting;
            }
        }
        throw fault(
                "mounting",
                TEXTS.text(
                        "table.notOneOf",
                        word,
                        Arrays.stream(Mounting.values()).map(EnumNames::of).collect(Collectors.joining(", "))));
    }

    private boolean measured() throws ProjectFileException {
        String word = cells.getOrDefault("measured", "");
        if (word.isEmpty() || word.equals("false")) {
            return false;
        }
        if (word.equals("true")) {
            return true;
        }
        throw fault("measured", TEXTS.text("table.notFlag", word));
    }

    private double needed(String name) throws ProjectFileException {
        OptionalDouble value = optional(name);
        if (value.isEmpty()) {
            throw fault(name, TEXTS.text("table.emptyCell"));
        }
        return value.getAsDouble();
    }

    private OptionalDouble optional(String name) throws ProjectFileException {
        String cell = cells.getOrDefault(name, "");
        if (cell.isEmpty()) {
            return OptionalDouble.empty();
        }
        Unit unit = NUMBERS.get(name);
        boolean plainRatio = unit == Unit.PERCENT && !cell.endsWith("%");
        try {
            double value =
                    QuantityParser.parse(cell, plainRatio ? Unit.NONE : unit).value();
            return OptionalDouble.of(unit == Unit.PERCENT && !plainRatio ? value / 100 : value);
        } catch (QuantityException wrong) {
            throw new ProjectFileException(
                    label, TEXTS.text("table.cell", label, String.valueOf(line), name, wrong.getMessage()), wrong);
        }
    }

    private <T> T build(Supplier<T> constructor) throws ProjectFileException {
        try {
            return constructor.get();
        } catch (IllegalArgumentException refused) {
            throw new ProjectFileException(
                    label,
                    TEXTS.text("table.row", label, String.valueOf(line), Refusal.said(refused.getMessage())),
                    refused);
        }
    }

    private ProjectFileException fault(String name, String sentence) {
        return new ProjectFileException(
                label, TEXTS.text("table.cell.sentence", label, String.valueOf(line), name, sentence), null);
    }
}
