// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Reader;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.exchange.internal.FormulaGuard;
import org.ohmstead.exchange.internal.WholeFile;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.units.text.Messages;

/**
 * A series of sound levels as text, in a folder {@code sound} of the project: UTF-8, quoted by RFC 4180, comma between cells, decimal
 * point, lines that end with CR LF (a reader takes LF alone too).
 *
 * <pre>
 * ohmstead-sound,1
 * name,before
 * meter,"class 2 meter, calibrated 2026-11-02"
 * common_std_uncertainty_dB,0.7
 * repeat_std_uncertainty_dB,0.5
 * frequency_Hz,drive_dB,level_dB,weighting,position
 * 50,-10,104.2,C,driver's ear
 * </pre>
 *
 * <p>The first five lines stand in this order. Uncertainties are standard ones (k = 1). An empty cell says that the drive was not noted.
 * A text that a spreadsheet would take for a formula has an apostrophe in front, which a reader takes away again; numbers stay numbers.
 */
public final class SoundSeriesCsv {
    /** The folder of a project that the workbench keeps series in. */
    public static final String FOLDER = "sound";

    private static final String MARK = "ohmstead-sound";
    private static final String VERSION = "1";
    private static final String NAME = "name";
    private static final String METER = "meter";
    private static final String COMMON = "common_std_uncertainty_dB";
    private static final String REPEAT = "repeat_std_uncertainty_dB";
    private static final List<String> HEADINGS =
            List.of("frequency_Hz", "drive_dB", "level_dB", "weighting", "position");
    private static final int MOST_ROWS = 100_000;
    private static final String LINE_END = "\r\n";
    private static final CsvSchema SCHEMA =
            CsvSchema.emptySchema().withoutHeader().withLineSeparator(LINE_END);

    private final String file;
    private final MappingIterator<String[]> rows;
    private int line;

    private SoundSeriesCsv(String file, MappingIterator<String[]> rows) {
        this.file = file;
        this.rows = rows;
    }

    /**
     * Writes a series to a file, wholly or not at all. A file that is there already is replaced.
     *
     * @param series what to write
     * @param target the file; its folder must exist
     * @throws ExchangeException when the file cannot be written
     */
    public static void write(SoundSeries series, Path target) throws ExchangeException {
        WholeFile.write(target, say("sound.written"), stream -> {
            Writer writer = new OutputStreamWriter(stream, StandardCharsets.UTF_8);
            write(series, writer);
            writer.flush();
        });
    }

    /**
     * Writes a series.
     *
     * @param series what to write
     * @param target takes the text; is not closed
     * @throws IOException when the target fails
     */
    public static void write(SoundSeries series, Appendable target) throws IOException {
        ObjectWriter row = new CsvMapper().writer(SCHEMA);
        List<List<String>> all = new ArrayList<>();
        all.add(List.of(MARK, VERSION));
        all.add(List.of(NAME, FormulaGuard.guarded(series.name())));
        all.add(List.of(METER, FormulaGuard.guarded(series.meter())));
        all.add(List.of(COMMON, number(series.commonDb())));
        all.add(List.of(REPEAT, number(series.repeatDb())));
        all.add(HEADINGS);
        for (SoundPoint point : series.points()) {
            all.add(List.of(
                    number(point.frequencyHz()),
                    point.driveDb().isPresent() ? number(point.driveDb().getAsDouble()) : "",
                    number(point.levelDb()),
                    point.weighting().name(),
                    FormulaGuard.guarded(point.position())));
        }
        for (List<String> cells : all) {
            target.append(row.writeValueAsString(cells));
        }
    }

    /**
     * Reads a series from a file.
     *
     * @param source the file
     * @throws ExchangeException when the file cannot be read or is no such series; the message says in which line what is wrong
     */
    public static SoundSeries read(Path source) throws ExchangeException {
        String name = source.getFileName().toString();
        ObjectReader reader = new CsvMapper()
                .enable(CsvParser.Feature.WRAP_AS_ARRAY)
                .enable(CsvParser.Feature.SKIP_EMPTY_LINES)
                .readerFor(String[].class)
                .with(SCHEMA);
        try (Reader text = Files.newBufferedReader(source, StandardCharsets.UTF_8);
                MappingIterator<String[]> rows = reader.readValues(text)) {
            return new SoundSeriesCsv(name, rows).series();
        } catch (JsonProcessingException malformed) {
            throw ExchangeException.refused(say("sound.malformed", name, malformed.getOriginalMessage()), malformed);
        } catch (CharacterCodingException notText) {
            throw ExchangeException.refused(say("sound.malformed", name, "UTF-8."), notText);
        } catch (IOException failure) {
            throw ExchangeException.failed(say("sound.unread", source, WholeFile.reason(failure)), failure);
        }
    }

    private SoundSeries series() throws IOException, ExchangeException {
        String[] first = next(List.of(MARK, VERSION));
        String mark = first[0].replace("\uFEFF", "");
        if (!mark.equals(MARK)) {
            throw ExchangeException.refused(say("sound.other", file, MARK, mark));
        }
        if (!first[1].strip().equals(VERSION)) {
            throw ExchangeException.refused(say("sound.newer", file, first[1], VERSION));
        }
        String name = value(NAME);
        String meter = value(METER);
        double commonDb = uncertainty(COMMON, value(COMMON));
        double repeatDb = uncertainty(REPEAT, value(REPEAT));
        String[] headings = next(HEADINGS);
        if (!List.of(headings).equals(HEADINGS)) {
            throw wrong(headings[0], say("sound.headings", String.join(",", HEADINGS)));
        }
        List<SoundPoint> points = new ArrayList<>();
        while (rows.hasNextValue()) {
            if (points.size() == MOST_ROWS) {
                throw ExchangeException.refused(say("sound.large", file, MOST_ROWS));
            }
            points.add(point(next(HEADINGS)));
        }
        return new SoundSeries(name, meter, commonDb, repeatDb, points);
    }

    private String[] next(List<String> wanted) throws IOException, ExchangeException {
        if (!rows.hasNextValue()) {
            throw ExchangeException.refused(say("sound.end", file, String.join(",", HEADINGS)));
        }
        String[] cells = rows.nextValue();
        line = rows.getCurrentLocation().getLineNr() - 1;
        if (cells.length != wanted.size()) {
            throw wrong(wanted.get(0), say("sound.cells", wanted.size(), cells.length));
        }
        return cells;
    }

    private String value(String key) throws IOException, ExchangeException {
        String[] cells = next(List.of(key, ""));
        if (!cells[0].equals(key)) {
            throw wrong(cells[0], say("sound.headings", key));
        }
        return FormulaGuard.unguarded(cells[1]);
    }

    private SoundPoint point(String[] cells) throws ExchangeException {
        double frequencyHz = number(HEADINGS.get(0), cells[0]);
        OptionalDouble driveDb =
                cells[1].isBlank() ? OptionalDouble.empty() : OptionalDouble.of(number(HEADINGS.get(1), cells[1]));
        double levelDb = number(HEADINGS.get(2), cells[2]);
        if (!cells[3].strip().matches("[ACZ]")) {
            throw wrong(HEADINGS.get(3), say("sound.weighting", cells[3]));
        }
        if (frequencyHz <= 0) {
            throw wrong(HEADINGS.get(0), say("sound.number", cells[0]));
        }
        FrequencyWeighting weighting = FrequencyWeighting.valueOf(cells[3].strip());
        return new SoundPoint(frequencyHz, driveDb, levelDb, weighting, FormulaGuard.unguarded(cells[4]));
    }

    private double uncertainty(String column, String cell) throws ExchangeException {
        double value = number(column, cell);
        if (value < 0) {
            throw wrong(column, say("sound.number", cell));
        }
        return value;
    }

    private double number(String column, String cell) throws ExchangeException {
        try {
            double value = Double.parseDouble(cell.strip());
            if (Double.isFinite(value)) {
                return value;
            }
            throw wrong(column, say("sound.number", cell));
        } catch (NumberFormatException notANumber) {
            throw ExchangeException.refused(
                    say("sound.line", file, line, column, say("sound.number", cell)), notANumber);
        }
    }

    private ExchangeException wrong(String column, String what) {
        return ExchangeException.refused(say("sound.line", file, line, column, what));
    }

    private static String number(double value) {
        BigDecimal decimal = BigDecimal.valueOf(value).stripTrailingZeros();
        return decimal.toPlainString();
    }

    private static String say(String key, Object... arguments) {
        return Messages.of(SoundSeriesCsv.class).text(key, arguments);
    }
}
