// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.thermal.HeatReading;
import org.ohmstead.thermal.PowerProfile;
import org.ohmstead.thermal.PowerStep;
import org.ohmstead.units.text.Messages;

/**
 * A logged warm-up or cool-down as text: a line for each reading with time, temperature and perhaps the heat that holds from there on, apart
 * by commas, semicolons, tabs or blanks. A first line of names, empty lines and lines that begin with # are passed over; a name with "min" or
 * "hour" says in which unit the times are. Times may be hours, minutes and seconds with colons, and then count from the first.
 *
 * @param readings of the thermometer
 * @param powers that heated it, when there is a third column
 */
record LoggedWarmth(List<HeatReading> readings, Optional<PowerProfile> powers) {
    private static final Messages TEXTS = Messages.of(LoggedWarmth.class);

    static final int MOST_READINGS = 20_000;
    private static final Pattern NUMBER = Pattern.compile("[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?");
    private static final Pattern CLOCK = Pattern.compile("(?:(\\d{1,4}):)?(\\d{1,2}):(\\d{1,2}(?:\\.\\d+)?)");
    private static final double MINUTE = 60;
    private static final double HOUR = 3600;
    private static final double MOST = 1e9;

    LoggedWarmth {
        readings = List.copyOf(readings);
    }

    /**
     * Reads a text.
     *
     * @throws IllegalArgumentException when a line is none; the message says which and what would be
     */
    static LoggedWarmth read(String text) {
        return new Reader().read(text);
    }

    /** What has been read so far. */
    private static final class Reader {
        private final List<Double> times = new ArrayList<>();
        private final List<Double> celsius = new ArrayList<>();
        private final List<Double> watts = new ArrayList<>();
        private double unit = 1;
        private boolean clock;

        private LoggedWarmth read(String text) {
            String[] lines = text.split("\\R");
            for (int index = 0; index < lines.length; index++) {
                String line = lines[index].strip();
                if (!line.isEmpty() && !line.startsWith("#")) {
                    line(line, index + 1);
                }
            }
            double first = clock && !times.isEmpty() ? times.get(0) : 0;
            List<HeatReading> readings = new ArrayList<>();
            for (int i = 0; i < times.size(); i++) {
                require(times.get(i) - first >= 0, TEXTS.text("record.before", Integer.toString(i + 1)));
                readings.add(new HeatReading(times.get(i) - first, celsius.get(i)));
            }
            return new LoggedWarmth(readings, watts.isEmpty() ? Optional.empty() : Optional.of(profile(first)));
        }

        private void line(String line, int number) {
            String[] cells = cells(line);
            boolean names = times.isEmpty() && !isTime(cells[0]);
            if (names) {
                String name = cells[0].toLowerCase(Locale.ROOT);
                require(
                        !NUMBER.matcher(name).lookingAt(),
                        TEXTS.text("record.notTime", Integer.toString(number), cells[0]));
                unit = name.contains("min") ? MINUTE : name.contains("hour") || name.contains("stund") ? HOUR : 1;
                return;
            }
            require(
                    cells.length == 2 || cells.length == 3,
                    TEXTS.text(
                            cells.length == 1 ? "record.figures.one" : "record.figures.many",
                            Integer.toString(number),
                            Integer.toString(cells.length)));
            require(
                    times.isEmpty() || (cells.length == 3) == !watts.isEmpty(),
                    TEXTS.text("record.otherNumber", Integer.toString(number), Integer.toString(cells.length)));
            require(times.size() < MOST_READINGS, TEXTS.text("record.tooMany"));
            times.add(time(cells[0], number));
            celsius.add(figure(cells[1], "temperature", number));
            if (cells.length == 3) {
                double heat = figure(cells[2], "heat", number);
                require(heat >= 0, TEXTS.text("record.negative", Integer.toString(number)));
                watts.add(heat);
            }
        }

        /** Where semicolons or tabs are between the figures, a comma is a decimal sign. */
        private static String[] cells(String line) {
            if (line.indexOf(';') >= 0 || line.indexOf('\t') >= 0) {
                return split(line.replace(',', '.'), "[;\\t]");
            }
            return line.indexOf(',') >= 0 ? split(line, ",") : split(line, "\\s+");
        }

        private static String[] split(String line, String between) {
            String[] cells = line.split(between);
            for (int i = 0; i < cells.length; i++) {
                cells[i] = cells[i].strip();
            }
            return cells;
        }

        private static boolean isTime(String cell) {
            return NUMBER.matcher(cell).matches() || CLOCK.matcher(cell).matches();
        }

        private double time(String cell, int number) {
            Matcher matcher = CLOCK.matcher(cell);
            if (matcher.matches()) {
                clock = true;
                double hours = matcher.group(1) == null ? 0 : Double.parseDouble(matcher.group(1));
                return HOUR * hours
                        + MINUTE * Double.parseDouble(matcher.group(2))
                        + Double.parseDouble(matcher.group(3));
            }
            return unit * figure(cell, "time", number);
        }

        private static double figure(String cell, String what, int number) {
            require(NUMBER.matcher(cell).matches(), TEXTS.text("record.no." + what, Integer.toString(number), cell));
            double value = Double.parseDouble(cell);
            require(Math.abs(value) <= MOST, TEXTS.text("record.huge." + what, Integer.toString(number)));
            return value;
        }

        private PowerProfile profile(double first) {
            List<PowerStep> steps = new ArrayList<>();
            double begun = 0;
            for (int i = 0; i < watts.size(); i++) {
                boolean last = i == watts.size() - 1;
                if (last || !watts.get(i + 1).equals(watts.get(i))) {
                    double ends = last ? times.get(i) - first : times.get(i + 1) - first;
                    steps.add(new PowerStep(Math.max(0, ends - begun), watts.get(i)));
                    begun = ends;
                }
            }
            return new PowerProfile(steps);
        }

        private static void require(boolean holds, String sentence) {
            HeatBindings.require(holds, sentence);
        }
    }
}
