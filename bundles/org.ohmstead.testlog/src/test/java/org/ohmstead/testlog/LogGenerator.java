// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.model.json.CanonicalJson;
import org.ohmstead.model.json.MeasuredFiguresJson;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.testlog.chain.ChainedRow;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** A log with as many entries as are wanted, always the same: readings, figures, notes and voids of many amplifiers over years. */
public final class LogGenerator {
    private static final String[] AMPLIFIERS = {
        "Larkspur 4.100", "Larkspur 2.300", "Kestrel D5", "Kestrel D1", "Tarn 600", "Moorland 80", "Fell 4", "Sorrel 1k"
    };
    private static final String[] OPERATORS = {"N. N.", "A. Bench", "C. Dial", "E. Fuse", ""};
    private static final String[] LOADS = {"4ohm", "2ohm", "1ohm", "8ohm"};
    private static final double[] OHMS = {4, 2, 1, 8};
    private static final String HASH = "ab".repeat(32);
    private static final Instant START = Instant.parse("2019-01-01T08:00:00Z");
    private static final int CHUNK = 20_000;

    private LogGenerator() {}

    /** Content of an entry. */
    private record Made(EntryKind kind, String body) {}

    private static Random random(int number) {
        return new Random(1_000_003L * number + 17);
    }

    /** Returns a reading; the same number gives the same one. */
    public static Reading reading(int number) {
        Random random = random(number);
        int load = random.nextInt(LOADS.length);
        double supply = 10.5 + random.nextInt(45) / 10.0;
        double power = Math.round(1e4 * supply * supply / OHMS[load] * (0.3 + 0.2 * random.nextDouble())) / 1e4;
        int frequency = List.of(20, 100, 1000, 10000).get(random.nextInt(4));
        boolean burst = random.nextInt(5) == 0;
        return new Reading(
                "step-" + random.nextInt(40),
                Mode.values()[random.nextInt(3)],
                LOADS[load],
                OHMS[load],
                burst ? new Stimulus.ToneBurst(frequency, 0.02, 0.5, -20) : new Stimulus.ContinuousSine(frequency),
                new EndPoint.ClippingOnset(),
                START.plusSeconds(230L * number + random.nextInt(100)),
                new Conditions(OptionalDouble.of(18 + random.nextInt(100) / 10.0), OptionalDouble.empty()),
                channels(random, OHMS[load], power, supply),
                provenance(random, "power-at-end-point"),
                notes(random));
    }

    private static List<ChannelReading> channels(Random random, double ohms, double power, double supply) {
        double volts = Math.sqrt(power * ohms);
        double thd = Math.round(1e6 * Math.pow(10, -3 + 2 * random.nextDouble())) / 1e6;
        EndPointOutcome outcome = EndPointOutcome.values()[random.nextInt(20) == 0 ? 1 : 0];
        return List.of(new ChannelReading(
                "A",
                outcome,
                ohms,
                power,
                power * 0.004,
                volts,
                1000,
                thd,
                supply,
                OptionalDouble.of(2 * power / supply),
                List.of(new UncertaintyPart("output volts meter", power * 0.003, true)),
                List.of(new SweepPoint(-1, volts, power, thd, thd, false, supply, OptionalDouble.empty(), HASH)),
                List.of(new HarmonicFigure(2, thd))));
    }

    private static Provenance provenance(Random random, String procedure) {
        String amplifier = AMPLIFIERS[random.nextInt(AMPLIFIERS.length)];
        String serial = String.format(Locale.ROOT, "SN%05d", random.nextInt(2000));
        boolean overdue = random.nextInt(50) == 0;
        return new Provenance(
                "cd".repeat(32),
                procedure,
                "0.1.0",
                "0.1.0",
                OPERATORS[random.nextInt(OPERATORS.length)],
                List.of(new InstrumentUsed(
                        "m1", MeterQuantity.OUTPUT_VOLTS, "Recorder", Optional.of(LocalDate.of(2024, 5, 1)), overdue)),
                List.of(new CaptureUsed(HASH, "a.wav", List.of(50.0))),
                random.nextInt(10) == 0
                        ? Optional.empty()
                        : Optional.of(new Specimen(amplifier, serial, "bench " + (1 + random.nextInt(3)))));
    }

    private static List<String> notes(Random random) {
        return switch (random.nextInt(4)) {
            case 0 ->
                List.of(String.format(
                        Locale.ROOT,
                        "The supply sagged to %.3f V; the lead was warm, %d \u00b0C.",
                        10 + 3 * random.nextDouble(),
                        30 + random.nextInt(20)));
            case 1 -> List.of("The load was hot.");
            default -> List.of();
        };
    }

    /** Returns figures; the same number gives the same ones. */
    public static MeasuredFigures figures(int number) {
        Random random = random(-number - 1);
        double factor = Math.round(1e3 * (40 + 400 * random.nextDouble())) / 1e3;
        return new MeasuredFigures(
                "step-" + random.nextInt(40),
                Mode.values()[random.nextInt(3)],
                LOADS[random.nextInt(LOADS.length)],
                12 + random.nextInt(30) / 10.0,
                START.plusSeconds(230L * number + random.nextInt(100)),
                new DriverUsed("org.example.bench", "1.0.0", BenchKind.SIMULATED, Map.of()),
                Map.of("level", "1"),
                List.of(
                        new MeasuredFigure("dampingFactor", "A", "", factor, "", OptionalDouble.empty()),
                        new MeasuredFigure("dampingFactor", "B", "", factor + 5, "", OptionalDouble.of(1.5)),
                        new MeasuredFigure("noise", "A", "", factor / 1e6, "V", OptionalDouble.empty())),
                new Conditions(OptionalDouble.of(21), OptionalDouble.empty()),
                provenance(random, "damping-factor"),
                notes(random));
    }

    private static Made made(int number) {
        int sort = random(number).nextInt(100);
        if (number > 1 && sort < 2) {
            return new Made(EntryKind.VOID, "");
        }
        if (sort < 6) {
            return new Made(
                    EntryKind.NOTE,
                    CanonicalJson.writeTexts(
                            Map.of("text", "Remark " + number + " \u2013 fan on.", "who", "A. Bench")));
        }
        return sort < 10
                ? new Made(EntryKind.FIGURES, MeasuredFiguresJson.toCanonicalText(figures(number)))
                : new Made(EntryKind.READING, ReadingJson.toCanonicalText(reading(number)));
    }

    /** Makes a log of a size, in a few transactions; each void takes back the newest reading that still counts. */
    public static void write(Path file, int entries) throws TestLogException, SQLException {
        TestLog.open(file).close();
        SQLiteConfig config = new SQLiteConfig();
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toUri());
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement();
                PreparedStatement insert =
                        connection.prepareStatement("INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?)")) {
            Writer writer = new Writer(insert);
            for (int from = 1; from <= entries; from += CHUNK) {
                statement.executeUpdate("BEGIN");
                // Only the content is made on several processors; the chain is made in order.
                for (Made made : IntStream.range(from, Math.min(from + CHUNK, entries + 1))
                        .parallel()
                        .mapToObj(LogGenerator::made)
                        .toList()) {
                    writer.add(made);
                }
                statement.executeUpdate("COMMIT");
            }
        }
    }

    private static final class Writer {
        private final PreparedStatement insert;
        private final int[] counts = new int[EntryKind.values().length];
        private long sequence;
        private String head = ChainedRow.FIRST_PREVIOUS_HASH;
        private String newest = "";

        Writer(PreparedStatement insert) {
            this.insert = insert;
        }

        void add(Made made) throws SQLException {
            boolean impossible = made.kind() == EntryKind.VOID && newest.isEmpty();
            EntryKind kind = impossible ? EntryKind.NOTE : made.kind();
            String body = made.body();
            if (impossible) {
                body = CanonicalJson.writeTexts(Map.of("text", "Nothing to void.", "who", ""));
            } else if (kind == EntryKind.VOID) {
                body = CanonicalJson.writeTexts(
                        Map.of("entryId", newest, "reason", "a lead was loose at " + sequence, "who", "N. N."));
            }
            counts[kind.ordinal()]++;
            String id = String.format(Locale.ROOT, "%c%04d", kind.idPrefix(), counts[kind.ordinal()]);
            newest = kind == EntryKind.READING ? id : kind == EntryKind.VOID ? "" : newest;
            sequence++;
            String time = START.plusSeconds(230 * sequence + 120).toString();
            ChainedRow row = ChainedRow.chained(sequence, kind.word(), id, time, body, head);
            head = row.hash();
            insert.setLong(1, row.sequence());
            insert.setString(2, row.kind());
            insert.setString(3, row.entryId());
            insert.setString(4, row.recordedAt());
            insert.setString(5, row.body());
            insert.setString(6, row.previousHash());
            insert.setString(7, row.hash());
            insert.executeUpdate();
        }
    }
}
