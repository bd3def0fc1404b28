// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;

/**
 * The texts that are written field by field, for readings and figures of all kinds. They are held against the same text read by the
 * library into a tree and written from that by {@link CanonicalJson}, whose tests follow the examples of RFC 8785.
 */
class CanonicalTextTest {
    private static final int TRIES = 1000;
    private static final String[] TEXTS = {
        "A", "front left", "\"as is\"", "4 \u03a9", "line\nfeed\t\\", "\ud83d\udd0a", "\u00b0C"
    };

    private final Random random = new Random(20261126);

    private <T> List<T> some(int most, Supplier<T> each) {
        return Stream.generate(each).limit(random.nextInt(most + 1)).toList();
    }

    private <T> Optional<T> perhaps(Supplier<T> value) {
        return random.nextBoolean() ? Optional.of(value.get()) : Optional.empty();
    }

    private OptionalDouble perhapsNumber() {
        return random.nextBoolean() ? OptionalDouble.of(1 + number()) : OptionalDouble.empty();
    }

    private <E extends Enum<E>> E any(Class<E> type) {
        E[] values = type.getEnumConstants();
        return values[random.nextInt(values.length)];
    }

    private String text() {
        return TEXTS[random.nextInt(TEXTS.length)];
    }

    /** Whole ones, short ones, and any that there are between the smallest and a large one. */
    private double number() {
        return switch (random.nextInt(4)) {
            case 0 -> random.nextInt(2_000_000_000);
            case 1 -> random.nextInt(100_000) / 1000.0;
            case 2 -> Math.scalb(random.nextDouble(), random.nextInt(400) - 300);
            default -> random.nextDouble();
        };
    }

    private double positive() {
        return Double.MIN_VALUE + number();
    }

    private Instant moment() {
        return Instant.ofEpochMilli(1_700_000_000_000L + random.nextInt());
    }

    private Stimulus stimulus() {
        return random.nextBoolean()
                ? new Stimulus.ContinuousSine(positive())
                : new Stimulus.ToneBurst(1000 + random.nextInt(9000), 0.02, 0.5, -random.nextInt(90) / 7.0);
    }

    private EndPoint endPoint() {
        return switch (random.nextInt(3)) {
            case 0 -> new EndPoint.ClippingOnset();
            case 1 -> new EndPoint.FixedLevel(-random.nextInt(600) / 7.0);
            default -> new EndPoint.DistortionLimit((1 + random.nextInt(99)) / 1000.0, any(DistortionMeasure.class));
        };
    }

    private UncertaintyPart part() {
        return new UncertaintyPart(
                text(),
                number(),
                random.nextBoolean(),
                any(PartShape.class),
                perhapsNumber(),
                perhaps(() -> any(BudgetInput.class)));
    }

    private SweepPoint point() {
        return new SweepPoint(
                -number(),
                number(),
                number(),
                number(),
                number(),
                random.nextBoolean(),
                positive(),
                perhapsNumber(),
                "ab".repeat(32));
    }

    private ChannelReading channel() {
        return new ChannelReading(
                text(),
                any(EndPointOutcome.class),
                positive(),
                number(),
                number(),
                number(),
                positive(),
                number(),
                positive(),
                perhapsNumber(),
                some(3, this::part),
                some(3, this::point),
                some(3, () -> new HarmonicFigure(2 + random.nextInt(20), number())),
                some(2, () -> new PartCorrelation("first " + text(), "second " + text(), random.nextDouble())));
    }

    private Provenance provenance() {
        return new Provenance(
                "cd".repeat(32),
                text(),
                "1.0.0",
                "0.1.0",
                random.nextBoolean() ? "" : text(),
                some(
                        3,
                        () -> new InstrumentUsed(
                                text(),
                                any(MeterQuantity.class),
                                text(),
                                perhaps(() -> LocalDate.of(2026, 1 + random.nextInt(12), 1)),
                                random.nextBoolean())),
                some(2, () -> new CaptureUsed("ef".repeat(32), text(), some(3, this::positive))),
                perhaps(() -> new Specimen(text(), "", text())));
    }

    private Conditions conditions() {
        return new Conditions(perhapsNumber(), perhapsNumber());
    }

    private Reading reading() {
        return new Reading(
                text(),
                any(Mode.class),
                text(),
                positive(),
                stimulus(),
                endPoint(),
                moment(),
                conditions(),
                Stream.generate(this::channel).limit(1 + random.nextInt(2)).toList(),
                provenance(),
                some(2, this::text));
    }

    private Map<String, String> settings() {
        return Map.of("level \u00fc", text(), "Zed", text(), "alpha", text());
    }

    private MeasuredFigures figures() {
        return new MeasuredFigures(
                text(),
                any(Mode.class),
                text(),
                positive(),
                moment(),
                new DriverUsed("org.example.bench", "1.0.0", any(BenchKind.class), settings()),
                settings(),
                List.of(
                        new MeasuredFigure("dampingFactor", "A", text(), number(), "", perhapsNumber()),
                        new MeasuredFigure("noise", "B", text(), -number(), "V", perhapsNumber())),
                conditions(),
                provenance(),
                some(2, this::text));
    }

    private static void assertCanonical(String text) throws Exception {
        assertEquals(CanonicalJson.write(new ObjectMapper().readTree(text)), text);
    }

    @Test
    void anyReadingIsWrittenAsTheTreeOfItIs() throws Exception {
        for (int each = 0; each < TRIES; each++) {
            Reading reading = reading();
            String text = ReadingJson.toCanonicalText(reading);
            assertCanonical(text);
            assertEquals(reading, ReadingJson.fromText(text));
        }
    }

    @Test
    void anyFiguresAreWrittenAsTheTreeOfThemIs() throws Exception {
        for (int each = 0; each < TRIES; each++) {
            MeasuredFigures figures = figures();
            String text = MeasuredFiguresJson.toCanonicalText(figures);
            assertCanonical(text);
            assertEquals(figures, MeasuredFiguresJson.fromText(text));
        }
    }
}
