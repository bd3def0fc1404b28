// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.ohmstead.thermal.HeatReading;
import org.ohmstead.thermal.PowerProfile;
import org.ohmstead.thermal.PowerStep;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/**
 * A logged warm-up or cool-down as a text file: seconds, degrees Celsius and, if there is a third column, watts that are on from that line to
 * the next. Commas, semicolons or tabs stand between; with one of the last two, numbers may have decimal commas. A first line without numbers
 * names the columns; empty lines and those that begin with # do not count.
 *
 * @param readings the readings, in the file's order
 * @param watts the power of each line, or empty when the file has none
 */
record HeatRecordFile(List<HeatReading> readings, List<Double> watts) {
    private static final long MOST_BYTES = 20_000_000;
    private static final int MOST_READINGS = 20_000;
    private static final Pattern NUMBER_FIRST = Pattern.compile("[+-]?[.,]?\\d.*");
    private static final List<List<String>> NAMES = List.of(
            List.of("second", "time", "s", "t"), List.of("celsius", "temp", "\u00b0c"), List.of("watt", "power", "w"));

    HeatRecordFile {
        readings = List.copyOf(readings);
        watts = List.copyOf(watts);
    }

    /** Reads a file. */
    static HeatRecordFile read(Path file) throws InputException, IOException {
        if (Files.isDirectory(file)) {
            throw new InputException(Texts.of("heatFile.folder", file));
        }
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new InputException(Texts.of("heatFile.large", file));
            }
            return parse(String.valueOf(file.getFileName()), Files.readString(file));
        } catch (NoSuchFileException missing) {
            throw new InputException(Texts.of("heatFile.missing", file));
        } catch (CharacterCodingException foreign) {
            throw new InputException(Texts.of("heatFile.encoding", file));
        }
    }

    /** Reads a text; the name stands in messages. */
    static HeatRecordFile parse(String name, String text) throws InputException {
        List<String> lines = text.replace("\ufeff", "").lines().toList();
        List<HeatReading> readings = new ArrayList<>();
        List<Double> watts = new ArrayList<>();
        int[] columns = {};
        String separator = "";
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            if (separator.isEmpty()) {
                separator = separator(line);
            }
            String[] cells = line.split(Pattern.quote(separator), -1);
            Place place = new Place(name, i + 1);
            if (columns.length == 0) {
                boolean header = !NUMBER_FIRST.matcher(cells[0].strip()).matches();
                columns = header ? named(cells, place) : counted(cells, place);
                if (header) {
                    continue;
                }
            }
            readings.add(reading(cells, columns, place, readings));
            if (columns.length > 2) {
                watts.add(number(cells, columns[2], Unit.WATT, place));
            }
            if (readings.size() > MOST_READINGS) {
                throw new InputException(Texts.of("heatFile.many", name, MOST_READINGS));
            }
        }
        if (readings.isEmpty()) {
            throw new InputException(Texts.of("heatFile.empty", name));
        }
        return new HeatRecordFile(readings, watts);
    }

    /** Returns the powers of the third column, each on from its line to the next; the first from time 0. */
    PowerProfile powers() {
        List<PowerStep> steps = new ArrayList<>();
        double begins = 0;
        for (int i = 0; i < watts.size(); i++) {
            boolean last = i == watts.size() - 1;
            if (last || !watts.get(i).equals(watts.get(i + 1))) {
                double ends =
                        last ? begins : Math.max(begins, readings.get(i + 1).seconds());
                steps.add(new PowerStep(ends - begins, watts.get(i)));
                begins = ends;
            }
        }
        return new PowerProfile(steps);
    }

    /** Where a text stands, for messages. */
    private record Place(String name, int line) {
        InputException error(String what) {
            return new InputException(Texts.of("heatFile.line", name, line, what));
        }
    }

    private static String separator(String line) {
        if (line.contains("\t")) {
            return "\t";
        }
        return line.contains(";") ? ";" : ",";
    }

    private static int[] counted(String[] cells, Place place) throws InputException {
        if (cells.length < 2) {
            throw place.error(Texts.of("heatFile.oneColumn"));
        }
        if (cells.length > NAMES.size()) {
            throw place.error(Texts.of("heatFile.columns", cells.length));
        }
        return cells.length > 2 && !cells[2].isBlank() ? new int[] {0, 1, 2} : new int[] {0, 1};
    }

    private static int[] named(String[] cells, Place place) throws InputException {
        int[] columns = NAMES.stream().mapToInt(names -> column(cells, names)).toArray();
        if (columns[0] < 0 || columns[1] < 0) {
            throw place.error(Texts.of("heatFile.names", String.join(", ", cells)));
        }
        return columns[2] < 0 ? Arrays.copyOf(columns, 2) : columns;
    }

    /** The words longer than a letter may begin a name, as in "seconds" or "temperature"; a single letter is the whole name. */
    private static int column(String[] cells, List<String> names) {
        for (int i = 0; i < cells.length; i++) {
            String cell = cells[i].replace("\"", "").strip().toLowerCase(Locale.ROOT);
            for (String name : names) {
                if (name.length() > 1 ? cell.startsWith(name) : cell.equals(name)) {
                    return i;
                }
            }
        }
        return -1;
    }

    private static HeatReading reading(String[] cells, int[] columns, Place place, List<HeatReading> before)
            throws InputException {
        double seconds = number(cells, columns[0], Unit.SECOND, place);
        if (seconds < 0) {
            throw place.error(Texts.of("heatFile.negative", cells[columns[0]].strip()));
        }
        if (!before.isEmpty() && seconds <= before.get(before.size() - 1).seconds()) {
            throw place.error(Texts.of("heatFile.order", cells[columns[0]].strip()));
        }
        return new HeatReading(seconds, number(cells, columns[1], Unit.CELSIUS, place));
    }

    private static double number(String[] cells, int column, Unit unit, Place place) throws InputException {
        if (column >= cells.length) {
            throw place.error(Texts.of("heatFile.few", cells.length, column + 1));
        }
        try {
            return QuantityParser.parse(cells[column].replace("\"", ""), unit).value();
        } catch (QuantityException e) {
            throw place.error(e.getMessage());
        }
    }
}
