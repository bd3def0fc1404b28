// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.Price;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Repeatability;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Supply;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.table.TableSpec;

/** All that the pages say is there in both languages, and nothing there is said by nobody. */
class SectionTextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d+");
    private static final Pattern ASKED = Pattern.compile("Texts\\.(text|counted|edit)\\(\\s*\"([^\"]+)\"\\s*([,)+])");
    private static final Pattern LITERAL = Pattern.compile("\"([a-z]+(?:\\.[A-Za-z.]*)?)\"");

    static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = Texts.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static List<String> sources() throws IOException {
        List<String> sources = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("src/main/java/org/ohmstead/workbench/internal/section"))) {
            for (Path file : files.toList()) {
                sources.add(Files.readString(file, StandardCharsets.UTF_8));
            }
        }
        return sources;
    }

    private static Set<String> places(Object text) {
        return PLACE.matcher(text.toString())
                .results()
                .map(found -> found.group())
                .collect(Collectors.toSet());
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(new TreeSet<>(english.keySet()), new TreeSet<>(german.keySet()));
        english.forEach((key, text) -> assertEquals(places(text), places(german.get(key)), key.toString()));
    }

    @Test
    void everyTextThatIsAskedForIsThere() throws IOException {
        Set<String> keys = texts("messages.properties").stringPropertyNames();
        int asked = 0;
        for (String source : sources()) {
            Matcher matcher = ASKED.matcher(source);
            while (matcher.find()) {
                String key = (matcher.group(1).equals("edit") ? "edit." : "") + matcher.group(2);
                asked++;
                if (matcher.group(3).equals("+")) {
                    assertTrue(keys.stream().anyMatch(each -> each.startsWith(key)), key);
                } else if (matcher.group(1).equals("counted")) {
                    assertTrue(keys.containsAll(Set.of(key + ".one", key + ".many")), key);
                } else {
                    assertTrue(keys.contains(key), key);
                }
            }
        }
        assertTrue(asked > 300, asked + " places ask for a text");
    }

    @Test
    void everyTextIsAskedFor() throws IOException {
        Set<String> literals = new HashSet<>();
        for (String source : sources()) {
            LITERAL.matcher(source).results().map(found -> found.group(1)).forEach(literals::add);
        }
        Set<String> unasked = new TreeSet<>();
        for (String key : texts("messages.properties").stringPropertyNames()) {
            String whole = key.replaceAll("\\.(one|many)$", "");
            boolean asked = key.startsWith("edit.")
                    || literals.contains(whole)
                    || literals.stream().anyMatch(part -> part.endsWith(".") && key.startsWith(part))
                    || whole.matches("step\\.(limit|level)\\.(only|needed)");
            if (!asked) {
                unasked.add(key);
            }
        }
        assertEquals(Set.of(), unasked);
    }

    private static List<TableSpec<?>> tables() {
        return List.of(
                AmplifierTables.ratings(),
                AmplifierTables.lowestLoads(),
                AmplifierTables.fuses(),
                MeterTable.spec(LocalDate::now),
                PartsPage.spec(),
                LoadsPage.spec(),
                BranchBinding.spec(),
                StepTable.spec(Optional::empty),
                CheckStandardTable.spec(Optional::empty));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void everyCellThatCanBeChangedNamesItsEdit(String language) {
        speaking(language, () -> {
            int named = 0;
            for (TableSpec<?> table : tables()) {
                Set<String> names = new HashSet<>();
                List<String> changeable = table.columns().stream()
                        .filter(column -> column.edit().isPresent())
                        .map(column -> column.id())
                        .toList();
                changeable.forEach(
                        id -> names.add(table.editNames().orElseThrow().apply(id)));
                assertEquals(changeable.size(), names.size(), table.id() + " " + names);
                named += names.size();
            }
            assertTrue(named > 70, named + " columns");
        });
    }

    /** The fields of a record, with those of the records within it. */
    private static List<String> fields(Class<?> type, String before) {
        List<String> fields = new ArrayList<>();
        for (RecordComponent component : type.getRecordComponents()) {
            String name = before + component.getName();
            fields.add(name);
            if (component.getType().isRecord()) {
                fields.addAll(fields(component.getType(), name + "."));
            }
        }
        return fields;
    }

    @Test
    void everyFieldOfTheFileHasItsWords() {
        // Lists and records that have places of their own are said by those.
        Set<String> placed = Set.of("ratings", "fuses", "lowestLoads", "meters", "parts", "supply", "cable");
        Map<String, List<Class<?>>> types = Map.of(
                "",
                        List.of(
                                Amplifier.class,
                                Rating.class,
                                Fuse.class,
                                LowestLoad.class,
                                Supply.class,
                                Cable.class,
                                Meter.class,
                                Part.class,
                                BenchLoad.class,
                                LoadBranch.class,
                                Step.class,
                                CheckStandard.class,
                                SharedLog.class,
                                SheetSettings.class),
                "heat.", List.of(HeatData.class),
                "price.", List.of(Price.class),
                "repeatability.", List.of(Repeatability.class),
                "verdictRule.", List.of(VerdictRule.class),
                "layout.", List.of(SheetLayout.class),
                "accuracy.", List.of(Accuracy.class),
                "traits.", List.of(PartTraits.class),
                "stability.", List.of(MeterStability.class));
        Set<String> wordless = new TreeSet<>();
        types.forEach((before, records) -> records.forEach(type -> fields(type, before).stream()
                .filter(field -> !placed.contains(field))
                .filter(field -> Texts.find("field." + PlaceWords.column(field)).isEmpty())
                .forEach(field -> wordless.add(type.getSimpleName() + " " + field))));
        assertEquals(Set.of(), wordless);
    }

    @Test
    void germanCountsAndSaysPlaces() {
        speaking("de", () -> {
            assertEquals("1 Schritt", Texts.counted("plan.summary", 1));
            assertEquals("12 Schritte", Texts.counted("plan.summary", 12));
            assertEquals("Leistung der Angabe ändern", Texts.edit("rating.powerWatts"));
            assertEquals("größte Spannung", PlaceWords.field("highestVolts"));
            assertEquals("strange thing", PlaceWords.field("strangeThing"), "it keeps the name that the file has");
        });
    }

    static void speaking(String language, Runnable action) {
        String before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, language);
        try {
            action.run();
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}
