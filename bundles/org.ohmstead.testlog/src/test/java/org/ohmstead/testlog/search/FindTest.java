// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;

class FindTest {
    @Test
    void aQueryIsReadAsItIsMeant() throws Exception {
        Find find = Find.parse(
                "amplifier:\"Larkspur 4*\" load:4 mode:Stereo power:80..120 thd:..1% from:2026-01-01 to:2026-01-31"
                        + " kind:reading,figures state:valid overdue:yes chain:own dampingFactor:50.. sagged \"two words\"");
        assertEquals("Larkspur 4*", find.amplifier());
        assertEquals(OptionalDouble.of(4), find.loadOhms());
        assertEquals(Optional.of(Mode.STEREO), find.mode());
        assertEquals(
                List.of(
                        new FigureRange("power", 80, 120),
                        new FigureRange("thd", Double.NEGATIVE_INFINITY, 0.01),
                        new FigureRange("dampingFactor", 50, Double.POSITIVE_INFINITY)),
                find.ranges());
        assertEquals(Optional.of(Instant.parse("2026-01-01T00:00:00Z")), find.from());
        assertEquals(Optional.of(Instant.parse("2026-02-01T00:00:00Z")), find.to(), "the last day counts");
        assertEquals(Set.of(EntryKind.READING, EntryKind.FIGURES), find.kinds());
        assertEquals(Set.of(EntryState.VALID), find.states());
        assertTrue(find.overdueOnly());
        assertEquals(Find.OWN_CHAIN, find.chain());
        assertEquals(List.of("sagged", "two words"), find.words());
        assertEquals(find, Find.parse(find.toText()));
    }

    @Test
    void nothingIsEverythingAndALoadMayBeOhmsOrAName() throws Exception {
        assertEquals(Find.EVERYTHING, Find.parse("  "));
        assertEquals("", Find.EVERYTHING.toText());
        assertTrue(Find.parse("").everything());
        assertEquals(OptionalDouble.of(4), Find.parse("load:4\u03a9").loadOhms());
        assertEquals("4ohm", Find.parse("load:4ohm").loadId());
        assertEquals("4", Find.parse("load:\"4\"").loadId());
        assertEquals("4", Find.parse(Find.EVERYTHING.withLoadId("4").toText()).loadId());
        assertEquals(
                List.of(new FigureRange("power", 80, 80)),
                Find.parse("POWER:80").ranges());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mode:quad|\"quad\" is not known behind \"mode:\"",
                "kind:reading,dream|\"dream\" is not known behind \"kind:\"",
                "mode:stereo,bridged|is not known behind",
                "kind:,|is not known behind",
                "state:maybe|Write one of: valid, voided",
                "amplifier:|Nothing stands behind \"amplifier:\"",
                "amplifier:a amplifier:b|has \"amplifier:\" twice",
                "load:4 load:2|has \"load:\" twice",
                "amplifer:Larkspur|\"amplifer:\", which is not known. Known are kind, chain, amplifier",
                "power:high|is not a range of numbers",
                "power:8,5..9|is not a range of numbers",
                "power:120..80|upper end must not be below",
                "from:yesterday|is not a day. Write it like 2026-01-31",
                "to:2026-02-30|is not a day",
                "from:2026-01-01T9|is not a day",
                "overdue:perhaps|Write one of: yes, no",
                "operator:\"N. N.|quotation mark that is not closed",
                "\"a\"b|directly behind the quotation marks",
                ":x|a colon with nothing before it",
            })
    void aMistakeIsSaidInASentence(String text, String sentence) {
        FindException refused = assertThrows(FindException.class, () -> Find.parse(text));
        assertTrue(refused.getMessage().contains(sentence), refused.getMessage());
        assertTrue(refused.getMessage().endsWith("."), refused.getMessage());
    }

    /** Any query, written and read again, is the same; seeded. */
    @Test
    void everyQueryReadsBackEqual() throws Exception {
        Random random = new Random(11);
        for (int round = 0; round < 5000; round++) {
            Find find = random(random);
            assertEquals(find, Find.parse(find.toText()), find.toText());
        }
    }

    static Find random(Random random) {
        List<String> words = new ArrayList<>();
        while (random.nextInt(3) == 0) {
            words.add(text(random) + "x");
        }
        List<FigureRange> ranges = new ArrayList<>();
        while (random.nextInt(3) == 0) {
            double one = random.nextGaussian() * Math.pow(10, random.nextInt(9) - 4);
            double other = one + Math.abs(random.nextGaussian());
            ranges.add(new FigureRange(
                    List.of("power", "thd", "supply", "dampingFactor", "x.y_z-1")
                            .get(random.nextInt(5)),
                    random.nextInt(4) == 0 ? Double.NEGATIVE_INFINITY : one,
                    random.nextInt(4) == 0 ? Double.POSITIVE_INFINITY : other));
        }
        return new Find(
                words,
                random.nextInt(3) == 0 ? Set.of(EntryKind.NOTE, EntryKind.values()[3 + random.nextInt(3)]) : Set.of(),
                random.nextInt(3) == 0 ? "B" : "",
                maybe(random),
                maybe(random),
                maybe(random),
                maybe(random),
                random.nextInt(3) == 0 ? Optional.of(Mode.values()[random.nextInt(3)]) : Optional.empty(),
                random.nextInt(3) == 0 ? OptionalDouble.of(random.nextDouble() * 10 + 1e-9) : OptionalDouble.empty(),
                random.nextInt(4) == 0 ? "7" : maybe(random),
                maybe(random),
                moment(random),
                moment(random),
                ranges,
                random.nextInt(3) == 0 ? Set.of(EntryState.VALID, EntryState.NOTE) : Set.of(),
                random.nextInt(3) == 0);
    }

    private static Optional<Instant> moment(Random random) {
        return switch (random.nextInt(4)) {
            case 0 -> Optional.of(Instant.ofEpochSecond(86_400L * (random.nextInt(40_000) - 10_000)));
            case 1 -> Optional.of(Instant.ofEpochSecond(random.nextInt(), random.nextInt(1_000_000_000)));
            default -> Optional.empty();
        };
    }

    private static String maybe(Random random) {
        return random.nextInt(3) == 0 ? text(random) : "";
    }

    private static String text(Random random) {
        StringBuilder text = new StringBuilder();
        int length = random.nextInt(12);
        for (int at = 0; at < length; at++) {
            text.append("ab C:\"*.,\t\n\u03a9\u00e9-1T".charAt(random.nextInt(16)));
        }
        return text.toString();
    }

    @Test
    void rangesThatAreNoneAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new FigureRange("power", 2, 1));
        assertThrows(IllegalArgumentException.class, () -> new FigureRange("power", Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> new FigureRange("load", 1, 2));
        assertThrows(IllegalArgumentException.class, () -> new FigureRange("two words", 1, 2));
        assertThrows(
                IllegalArgumentException.class,
                () -> new FigureRange("power", Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> Find.EVERYTHING.withLoadOhms(OptionalDouble.of(0)));
        assertThrows(IllegalArgumentException.class, () -> Find.EVERYTHING.withWords(List.of(" ")));
    }
}
