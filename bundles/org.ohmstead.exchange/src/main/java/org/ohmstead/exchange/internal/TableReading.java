// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.ZipException;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ImportFault;
import org.ohmstead.exchange.ImportSettings;
import org.ohmstead.exchange.internal.Field.Column;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/** Makes readings of a table, and collects what is wrong with it. */
public final class TableReading {
    private static final Messages TEXTS = Messages.of(TableReading.class);
    /** What imported readings name as their procedure. */
    public static final String PROCEDURE = "org.ohmstead.import";

    /** The version of that procedure. */
    public static final String PROCEDURE_VERSION = "1";

    private static final int MOST_FAULTS = 200;
    private static final List<Field> OF_ONE_READING =
            List.of(Field.TAKEN_AT, Field.TAKEN_AT_UTC, Field.STEP, Field.MODE, Field.LOAD, Field.NOMINAL_LOAD);

    private final ImportSettings settings;
    private final String fileName;
    private final String sha256;
    private final Map<Field, Integer> places = new EnumMap<>(Field.class);
    private final List<Column> columns = new ArrayList<>();
    private final List<String> unused = new ArrayList<>();
    private final List<Found> found = new ArrayList<>();
    private final List<ImportFault> faults = new ArrayList<>();
    private long faultCount;
    private int badReadings;
    private int voidedRows;

    private final List<ImportedRow> group = new ArrayList<>();
    private String groupKey = "";
    private boolean groupBad;

    private TableReading(ImportSettings settings, String fileName, String sha256) {
        this.settings = settings;
        this.fileName = fileName;
        this.sha256 = sha256;
    }

    /**
     * A reading of the table.
     *
     * @param reading as it would be added
     * @param entryHash hash of the entry that it was exported from; empty when the table names none
     */
    public record Found(Reading reading, String entryHash) {}

    /** Returns readings that were found elsewhere, with nothing wrong. */
    public static TableReading of(String fileName, String sha256, List<Found> found) {
        TableReading reading = new TableReading(null, fileName, sha256);
        reading.found.addAll(found);
        return reading;
    }

    /** Reads a file. */
    public static TableReading read(Path file, ImportSettings settings) throws ExchangeException {
        String name = String.valueOf(file.getFileName());
        try {
            if (!Files.isRegularFile(file)) {
                throw ExchangeException.refused(TEXTS.text("file.none", file));
            }
            if (Files.size(file) > settings.limits().fileBytes()) {
                throw ExchangeException.refused(
                        TEXTS.text("table.fileLarge", name, settings.limits().fileBytes()));
            }
            TableReading reading = new TableReading(settings, name, CaptureStore.sha256(file));
            try (RawTable table = isWorkbook(file)
                    ? XlsxTable.open(file, settings.limits())
                    : CsvTable.open(file, settings.dialect(), settings.limits())) {
                reading.take(table);
            }
            return reading;
        } catch (InflationGuard.TooMuch tooMuch) {
            throw tooMuch.refusal();
        } catch (ZipException damaged) {
            throw ExchangeException.refused(TEXTS.text("workbook.damaged", name, damaged.getMessage()), damaged);
        } catch (EOFException damaged) {
            throw ExchangeException.refused(TEXTS.text("workbook.cut", name), damaged);
        } catch (CharacterCodingException notUtf8) {
            throw ExchangeException.refused(TEXTS.text("table.notUtf8", name), notUtf8);
        } catch (IOException failure) {
            throw ExchangeException.failed(TEXTS.text("file.unread", file, WholeFile.reason(failure)), failure);
        } catch (TestLogException failure) {
            throw ExchangeException.ofLog(TEXTS.text("file.unreadShort", file), failure);
        }
    }

    private static boolean isWorkbook(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] mark = in.readNBytes(2);
            return mark.length == 2 && mark[0] == 'P' && mark[1] == 'K'
                    || file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".xlsx");
        }
    }

    private void take(RawTable table) throws IOException, ExchangeException {
        RawRow head = table.next().orElseThrow(() -> ExchangeException.refused(TEXTS.text("table.empty", fileName)));
        takeHeadings(head, table);
        int rows = 0;
        for (Optional<RawRow> row = table.next(); row.isPresent(); row = table.next()) {
            rows++;
            if (rows > settings.limits().rows()) {
                throw ExchangeException.refused(
                        TEXTS.text("table.manyRows", fileName, settings.limits().rows()));
            }
            takeRow(row.get(), table);
        }
        endGroup();
    }

    private void takeHeadings(RawRow head, RawTable table) throws ExchangeException {
        for (int index = 0; index < head.cells().size(); index++) {
            String cell = head.cell(index).text();
            String heading = (table.guarded() ? FormulaGuard.unguarded(cell) : cell).strip();
            Optional<Column> column = Field.of(heading);
            columns.add(column.orElse(null));
            if (column.isEmpty()) {
                refuseWithoutUnit(heading);
                unused.add(heading);
            } else if (places.putIfAbsent(column.get().field(), index) != null) {
                throw ExchangeException.refused(TEXTS.text(
                        "table.headingTwice",
                        columns.get(places.get(column.get().field())).heading(),
                        heading));
            }
        }
        List<String> missing = new ArrayList<>();
        Field.REQUIRED.stream()
                .filter(field -> !places.containsKey(field))
                .forEach(field -> missing.add(field.example()));
        if (!places.containsKey(Field.TAKEN_AT) && !places.containsKey(Field.TAKEN_AT_UTC)) {
            missing.add(Field.TAKEN_AT_UTC.example());
        }
        if (!missing.isEmpty()) {
            char other = table.decimalMark() == '.' ? ';' : ',';
            throw ExchangeException.refused(TEXTS.text(
                    isSeparatedBy(other, head, table) ? "table.lacksOfOther" : "table.lacks",
                    head.line(),
                    fileName,
                    String.join(", ", missing),
                    other));
        }
    }

    private static void refuseWithoutUnit(String heading) throws ExchangeException {
        if (Field.lacksUnit(heading)) {
            throw ExchangeException.refused(TEXTS.text("table.noUnit", heading));
        }
    }

    private static boolean isSeparatedBy(char other, RawRow head, RawTable table) {
        boolean oneCell = head.cells().size() == 1 && table.guarded();
        return oneCell && head.cell(0).text().indexOf(other) >= 0;
    }

    private void takeRow(RawRow row, RawTable table) {
        String key = key(row);
        if (!key.equals(groupKey)) {
            endGroup();
            groupKey = key;
        }
        List<ImportFault> rowFaults = new ArrayList<>();
        RowReader in = new RowReader(row, table, places, columns, rowFaults);
        if (in.text(Field.VOIDED).equalsIgnoreCase("yes")) {
            voidedRows++;
            return;
        }
        Optional<ImportedRow> imported = ImportedRow.read(row, in, settings);
        if (rowFaults.isEmpty() && imported.isPresent()) {
            if (!group.isEmpty()
                    && !group.get(0).setting().equals(imported.get().setting())) {
                endGroup();
            }
            if (group.stream().anyMatch(other -> other.channel()
                    .channel()
                    .equals(imported.get().channel().channel()))) {
                in.fault(Field.CHANNEL, TEXTS.text("row.channelTwice"));
            }
            group.add(imported.get());
        }
        groupBad |= !rowFaults.isEmpty();
        faultCount += rowFaults.size();
        rowFaults.stream().limit(Math.max(0, MOST_FAULTS - faults.size())).forEach(faults::add);
    }

    private String key(RawRow row) {
        Integer entry = places.get(Field.ENTRY);
        if (entry != null && !row.cell(entry).text().isBlank()) {
            return row.cell(entry).text();
        }
        StringBuilder key = new StringBuilder();
        OF_ONE_READING.stream().filter(places::containsKey).forEach(field -> key.append('\n')
                .append(row.cell(places.get(field)).text()));
        return key.toString();
    }

    private void endGroup() {
        if (groupBad) {
            badReadings++;
        } else if (!group.isEmpty()) {
            found.add(new Found(
                    reading(List.copyOf(group)), group.get(0).setting().entryHash()));
        }
        group.clear();
        groupBad = false;
    }

    private Reading reading(List<ImportedRow> rows) {
        ImportedRow.Setting setting = rows.get(0).setting();
        List<ChannelReading> channels = rows.stream().map(ImportedRow::channel).toList();
        return new Reading(
                setting.step(),
                setting.mode(),
                setting.load(),
                setting.nominalLoadOhms(),
                setting.stimulus(),
                setting.endPoint(),
                setting.takenAt(),
                setting.conditions(),
                channels,
                new Provenance(
                        settings.projectRevision(),
                        PROCEDURE,
                        PROCEDURE_VERSION,
                        settings.softwareVersion(),
                        setting.operator(),
                        List.of(),
                        List.of(),
                        setting.specimen()),
                ImportedRow.notes(rows, fileName, sha256));
    }

    /** Returns the readings that can be added, in the order of the table. */
    public List<Found> found() {
        return List.copyOf(found);
    }

    /** Returns what is wrong, at most the first 200. */
    public List<ImportFault> faults() {
        return List.copyOf(faults);
    }

    /** Returns how much is wrong. */
    public long faultCount() {
        return faultCount;
    }

    /** Returns how many readings cannot be added. */
    public int badReadings() {
        return badReadings;
    }

    /** Returns how many rows say that they were voided. */
    public int voidedRows() {
        return voidedRows;
    }

    /** Returns the headings that stand for nothing known and are not among those that only an export has. */
    public List<String> unused() {
        Set<String> exported = new HashSet<>(ReadingColumns.headings(true));
        return unused.stream()
                .filter(heading -> !heading.isEmpty() && !exported.contains(heading))
                .toList();
    }

    /** Returns the SHA-256 of the file. */
    public String sha256() {
        return sha256;
    }

    /** Returns the name of the file. */
    public String fileName() {
        return fileName;
    }
}
