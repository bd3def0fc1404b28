// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ohmstead.units.text.Said;

/**
 * Tables of samples as text: the first column is the time in seconds, each further column one channel, in volts or
 * in another unit of which the volts are stated. A line of titles may come first. Columns are separated by tabs,
 * semicolons or commas; unless the comma separates, it may stand for the decimal point. The text is UTF-8, with or
 * without a byte-order mark.
 */
public final class CsvWaveform {
    private static final int MOST_CHANNELS = 32;
    private static final int MOST_LINE_CHARACTERS = 1 << 16;
    private static final double LEAST_RATE_HZ = 1e-3;
    private static final double MOST_RATE_HZ = 1e12;
    private static final double MOST_RATE_UNCERTAINTY = 1e-3;
    private static final Pattern NUMBER = Pattern.compile("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d+)?");

    private final Path file;
    private final List<double[]> columns = new ArrayList<>();
    /** As given; from the first line of numbers on, one per channel. */
    private double[] scales;

    private String separator = ",";
    private int size;
    private int firstDataLine;
    private double lastDecimal = Double.POSITIVE_INFINITY;
    private int mostDigits;

    private CsvWaveform(Path file, double[] scales) {
        this.file = file;
        this.scales = scales;
    }

    /** Reads a table whose channels are in volts, otherwise as {@link #read(Path, double[])}. */
    public static Capture read(Path file) throws CaptureException {
        return read(file, new double[] {1});
    }

    /**
     * Reads a table. The sample rate comes from the times, which must be evenly spaced to 1 % of a step (and to the
     * digits in which they are written).
     *
     * @param file the file
     * @param voltsPerUnit volts that a one in the table stands for, finite and above zero (1 if the table is in volts):
     *     one value for all channels, or one per channel
     * @throws CaptureException if the file cannot be read, a cell is no finite number, the times are uneven, or the
     *     number of scales fits the channels in neither way; the message names the file, and the line and the column
     * @throws IllegalArgumentException if a scale is not finite and above zero, or none is given
     */
    public static Capture read(Path file, double[] voltsPerUnit) throws CaptureException {
        CsvWaveform table = new CsvWaveform(file, WavFile.requireScales(voltsPerUnit));
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            table.readLines(reader);
        } catch (CharacterCodingException e) {
            throw new CaptureException(Texts.said("csv.neither", file.getFileName()), e);
        } catch (IOException e) {
            throw FileFailure.reading(file, e);
        }
        return table.capture();
    }

    /** Says what is wrong; the text's first argument is the file. */
    private CaptureException wrong(String key, Object... arguments) {
        return new CaptureException(Texts.said(key, withFile(arguments)));
    }

    private Object[] withFile(Object... arguments) {
        return Stream.concat(Stream.of(file.getFileName()), Arrays.stream(arguments))
                .toArray();
    }

    private void readLines(BufferedReader reader) throws IOException, CaptureException {
        int lineNumber = 0;
        boolean first = true;
        int blankLine = 0;
        for (String raw = nextLine(reader, 1); raw != null; raw = nextLine(reader, lineNumber + 1)) {
            lineNumber++;
            String line = lineNumber == 1 && raw.startsWith("\uFEFF") ? raw.substring(1) : raw;
            if (line.isBlank()) {
                blankLine = blankLine == 0 ? lineNumber : blankLine;
                continue;
            }
            if (first) {
                first = false;
                blankLine = 0;
                separator = separatorOf(line);
                if (!NUMBER.matcher(normalized(line.split(separator, -1)[0])).matches()) {
                    continue;
                }
            }
            if (blankLine > 0 && size > 0) {
                throw wrong("csv.blank", blankLine);
            }
            addLine(line, lineNumber);
        }
    }

    /** The next line without its end, or null: a file without line ends must not fill the memory. */
    private String nextLine(BufferedReader reader, int lineNumber) throws IOException, CaptureException {
        StringBuilder line = new StringBuilder();
        int read = reader.read();
        if (read < 0) {
            return null;
        }
        while (read >= 0 && read != '\n' && read != '\r') {
            if (line.length() == MOST_LINE_CHARACTERS) {
                throw wrong("csv.longLine", lineNumber, MOST_LINE_CHARACTERS);
            }
            line.append((char) read);
            read = reader.read();
        }
        if (read == '\r') {
            reader.mark(1);
            if (reader.read() != '\n') {
                reader.reset();
            }
        }
        return line.toString();
    }

    private static String separatorOf(String line) {
        if (line.indexOf('\t') >= 0) {
            return "\t";
        }
        return line.indexOf(';') >= 0 ? ";" : ",";
    }

    private String normalized(String cell) {
        String text = cell.strip();
        if (text.length() >= 2 && text.startsWith("\"") && text.endsWith("\"")) {
            text = text.substring(1, text.length() - 1).strip();
        }
        return ",".equals(separator) ? text : text.replace(',', '.');
    }

    private void addLine(String line, int lineNumber) throws CaptureException {
        String[] cells = line.split(separator, -1);
        if (columns.isEmpty()) {
            if (cells.length < 2 || cells.length > MOST_CHANNELS + 1) {
                throw new CaptureException(Said.of(() ->
                        Texts.counted("csv.columns", cells.length, withFile(lineNumber, cells.length, MOST_CHANNELS))));
            }
            for (int c = 0; c < cells.length; c++) {
                columns.add(new double[1024]);
            }
            firstDataLine = lineNumber;
            scales = WavFile.scalesFor(file, cells.length - 1, scales);
        }
        if (cells.length != columns.size()) {
            throw wrong("csv.otherColumns", lineNumber, cells.length, columns.size());
        }
        for (int c = 0; c < cells.length; c++) {
            double[] column = columns.get(c);
            if (size == column.length) {
                requireRoom();
                column = Arrays.copyOf(column, 2 * column.length);
                columns.set(c, column);
            }
            column[size] = number(cells[c], c == 0 ? 1 : scales[c - 1], lineNumber, c + 1);
        }
        String time = normalized(cells[0]);
        lastDecimal = Math.min(lastDecimal, lastDigit(time));
        mostDigits = Math.max(mostDigits, significantDigits(time));
        size++;
    }

    private void requireRoom() throws CaptureException {
        if (!WavReader.fitsMemory(2L * size * columns.size())) {
            throw wrong("csv.tooLarge");
        }
    }

    private double number(String cell, double scale, int lineNumber, int column) throws CaptureException {
        String text = normalized(cell);
        if (NUMBER.matcher(text).matches()) {
            double value = scale * Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        }
        throw text.isEmpty()
                ? wrong("csv.emptyCell", lineNumber, column)
                : wrong("csv.noNumber", lineNumber, column, shortened(text));
    }

    private static String shortened(String text) {
        return text.length() <= 30 ? text : text.substring(0, 30) + "...";
    }

    /** Value of a one in the last written digit. */
    private static double lastDigit(String text) {
        int exponentAt = Math.max(text.indexOf('e'), text.indexOf('E'));
        String digits = exponentAt < 0 ? text : text.substring(0, exponentAt);
        int exponent = exponentAt < 0 ? 0 : (int) Double.parseDouble(text.substring(exponentAt + 1));
        int point = digits.indexOf('.');
        return Math.pow(10, exponent - (point < 0 ? 0 : digits.length() - point - 1));
    }

    private static int significantDigits(String text) {
        int digits = 0;
        for (int i = 0; i < text.length() && "eE".indexOf(text.charAt(i)) < 0; i++) {
            char sign = text.charAt(i);
            digits += sign >= (digits > 0 ? '0' : '1') && sign <= '9' ? 1 : 0;
        }
        return digits;
    }

    private Capture capture() throws CaptureException {
        if (size < 2) {
            throw wrong(size == 0 ? "csv.noSamples" : "csv.oneSample");
        }
        double sampleRateHz = sampleRateHz();
        List<Waveform> channels = new ArrayList<>();
        for (int c = 1; c < columns.size(); c++) {
            channels.add(Waveform.wrap(sampleRateHz, Arrays.copyOf(columns.get(c), size)));
        }
        String text = String.format(
                Locale.ROOT,
                "CSV, %d channel%s, %s Hz",
                channels.size(),
                channels.size() == 1 ? "" : "s",
                Digits.of(sampleRateHz, 9));
        return new Capture(channels, String.valueOf(file.getFileName()), text);
    }

    private double sampleRateHz() throws CaptureException {
        SampleTimes times = new SampleTimes(Arrays.copyOf(columns.get(0), size), lastDecimal, mostDigits);
        if (!times.rise()) {
            throw wrong("csv.timesFall");
        }
        double meanRateHz = 1 / times.meanStepSeconds();
        if (!(meanRateHz >= LEAST_RATE_HZ && meanRateHz <= MOST_RATE_HZ)) {
            throw wrong("csv.timesApart", String.format(Locale.ROOT, "%.3g", times.meanStepSeconds()));
        }
        OptionalInt uneven = times.unevenIndex();
        if (uneven.isPresent() && !(times.typicalStepSeconds() > 0)) {
            throw wrong("csv.timesFall");
        }
        if (uneven.isPresent()) {
            int index = uneven.getAsInt();
            throw uneven(index, times.stepSeconds(index), times.typicalStepSeconds());
        }
        if (times.rateUncertaintyRatio() > MOST_RATE_UNCERTAINTY) {
            throw wrong("csv.fewDigits");
        }
        return times.sampleRateHz();
    }

    private CaptureException uneven(int index, double actual, double typical) {
        return wrong("csv.uneven", firstDataLine + index, Digits.of(actual, 6), Digits.of(typical, 6));
    }
}
