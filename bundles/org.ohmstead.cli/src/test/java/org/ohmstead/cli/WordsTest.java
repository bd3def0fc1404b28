// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Enumeration;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Language;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** What the words say of themselves, in each language. */
class WordsTest {
    private static final Pattern BUNDLE = Pattern.compile("\\$\\{bundle:([^}]*)}");
    /** What the help fills in, its lines and signs, and names of options. */
    private static final Pattern MARKS = Pattern.compile("\\$\\{[^}]*}|%.|--[a-z-]+");

    private static final Pattern PLACES = Pattern.compile("\\$\\d");

    /** Command lines with one fault each, and all kinds of faults that the parser finds. */
    private static final List<String> FAULTS = List.of(
            "repot",
            "log fnid x",
            "--nonsense",
            "report --desing x",
            "report x --foo --bar",
            "report x y z",
            "report",
            "lab grant x",
            "log void x y --who z",
            "log join x y --nam z",
            "compare",
            "compare x",
            "load find --target-ohms",
            "load find --max-parts x",
            "report x --paper a4 --paper a4",
            "check x --json --json",
            "lesson show x --set --json",
            "thermal step --direct=perhaps",
            "thermal step --mode nonsense",
            "log export nonsense x",
            "signal make sine x --seed y",
            "analyze x --load-ohms 4 --load-microhenries y",
            "log archive x y --take-out-before z",
            "run x --driver");

    private static Map<String, String> texts(String file) throws IOException {
        Properties texts = new Properties();
        try (InputStream stream = Words.class.getResourceAsStream(file)) {
            texts.load(new InputStreamReader(stream, StandardCharsets.UTF_8));
        }
        Map<String, String> sorted = new TreeMap<>();
        texts.forEach((key, text) -> sorted.put(key.toString(), text.toString()));
        return sorted;
    }

    private static List<String> found(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(MatchResult::group)
                .distinct()
                .sorted()
                .toList();
    }

    @Test
    void aWordByItselfIsTheSameAsAmongAllOthers() {
        Map<String, CommandLine> all = root().getSubcommands();
        assertTrue(all.size() > 15, all.size() + " words");
        all.forEach((name, word) -> {
            Map<String, CommandLine> alone = root(name, "--help").getSubcommands();
            assertEquals(Set.of(name), alone.keySet());
            assertEquals(
                    word.getSubcommands().keySet(),
                    alone.get(name).getSubcommands().keySet());
            assertEquals(word.getUsageMessage(), alone.get(name).getUsageMessage());
        });
    }

    @Test
    void onlyTheVersionNeedsNoWords() {
        assertEquals(Set.of(), root("--version").getSubcommands().keySet());
        Set<String> all = root().getSubcommands().keySet();
        assertEquals(all, root("--help").getSubcommands().keySet());
        assertEquals(all, root("--version", "lab").getSubcommands().keySet());
        assertEquals(all, root("labb").getSubcommands().keySet());
    }

    private static CommandLine root(String... arguments) {
        PrintStream nowhere = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        Console console = new Console(nowhere, nowhere, new ConsoleInput(new ByteArrayInputStream(new byte[0]), false));
        return Ohmstead.commands(console, new FrameworkPlugins(console), arguments);
    }

    private static List<CommandSpec> words() {
        List<CommandSpec> words = new ArrayList<>();
        collect(root(), words);
        assertTrue(words.size() > 60, words.size() + " words");
        return words;
    }

    private static void collect(CommandLine word, List<CommandSpec> words) {
        words.add(word.getCommandSpec());
        word.getSubcommands().values().forEach(each -> collect(each, words));
    }

    private static Set<String> keys(CommandSpec word) {
        Command said = word.userObject().getClass().getAnnotation(Command.class);
        Set<String> keys = new HashSet<>();
        Stream.of(said.description(), said.footer(), new String[] {said.synopsisSubcommandLabel()})
                .flatMap(Arrays::stream)
                .filter(text -> !text.isEmpty() && !text.equals("[COMMAND]"))
                .forEach(text -> {
                    List<String> named = BUNDLE.matcher(text)
                            .results()
                            .map(key -> key.group(1))
                            .toList();
                    assertEquals(1, named.size(), word.qualifiedName() + " keeps a text in its code: " + text);
                    keys.addAll(named);
                });
        for (ArgSpec argument : word.args()) {
            assertFalse(
                    argument.descriptionKey().isEmpty(),
                    word.qualifiedName() + " does not say what this is: " + argument);
            keys.add(argument.descriptionKey());
        }
        return keys;
    }

    private static String help(CommandSpec word, Locale language) {
        return Language.speaking(language, () -> word.commandLine().getUsageMessage(CommandLine.Help.Ansi.OFF));
    }

    @Test
    void bothLanguagesSayTheSame() throws IOException {
        Map<String, String> english = texts("words.properties");
        Map<String, String> german = texts("words_de.properties");
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            assertFalse(german.get(key).isBlank() && !text.isBlank(), key);
            if (key.startsWith("fault.")) {
                assertTrue(found(PLACES, text).containsAll(found(PLACES, german.get(key))), key);
            } else if (!key.equals("log.export.does")) { // an aligned list, whose lines break elsewhere
                assertEquals(count(MARKS, text), count(MARKS, german.get(key)), key);
            }
        });
    }

    private static Map<String, Integer> count(Pattern pattern, String text) {
        Map<String, Integer> counted = new TreeMap<>();
        pattern.matcher(text).results().forEach(mark -> counted.merge(mark.group(), 1, Integer::sum));
        return counted;
    }

    @Test
    void everyTextIsThereAndUsed() throws IOException {
        Set<String> used = new TreeSet<>(Set.of("usage.synopsisHeading", "usage.commandListHeading"));
        used.addAll(UsageFaults.keys());
        words().forEach(word -> used.addAll(keys(word)));
        assertEquals(used, new TreeSet<>(texts("words.properties").keySet()));
    }

    @Test
    void everyWordExplainsItselfInBothLanguages() {
        for (CommandSpec word : words()) {
            String english = help(word, Locale.ENGLISH);
            String german = help(word, Locale.GERMAN);
            String name = word.qualifiedName();
            assertTrue(english.startsWith("Usage: " + name + " "), english);
            assertTrue(german.startsWith("Aufruf: " + name + " "), german);
            assertTrue(german.contains("Diese Hilfe zeigen."), german);
            for (String help : List.of(english, german)) {
                assertFalse(help.contains("bundle:"), help);
                assertFalse(help.contains("${"), help);
                assertFalse(help.contains("%%"), help);
                assertFalse(Pattern.compile("\\bnull\\b").matcher(help).find(), help);
            }
            assertEquals(english, help(word, Locale.ENGLISH));
        }
    }

    @Test
    void theMachineDoesNotStepInWhereEnglishIsAsked() {
        Locale machine = Locale.getDefault();
        Locale.setDefault(Locale.GERMANY);
        ResourceBundle.clearCache(Words.class.getClassLoader());
        try {
            assertTrue(help(root().getCommandSpec(), Locale.ENGLISH).startsWith("Usage: ohmstead "));
            assertTrue(help(root().getCommandSpec(), Locale.forLanguageTag("de-AT"))
                    .startsWith("Aufruf: ohmstead "));
        } finally {
            Locale.setDefault(machine);
        }
    }

    @Test
    void aDefaultValueIsFilledIn() {
        CommandSpec find =
                root().getSubcommands().get("load").getSubcommands().get("find").getCommandSpec();
        assertTrue(help(find, Locale.ENGLISH).contains("1 to 30 (default 7)."));
        assertTrue(help(find, Locale.GERMAN).contains("1 bis 30 (ohne Angabe 7)."));
    }

    @Test
    void faultsAreSaidInBothLanguages() {
        ResourceBundle english = Words.in(Locale.ENGLISH);
        ResourceBundle german = Words.in(Locale.GERMAN);
        Set<String> met = new TreeSet<>();
        CommandLine root = root();
        for (String words : FAULTS) {
            ParameterException fault =
                    assertThrows(ParameterException.class, () -> root.parseArgs(words.split(" ")), words);
            String sentence = fault.getMessage();
            assertEquals(sentence, UsageFaults.said(sentence, english));
            assertNotEquals(sentence, UsageFaults.said(sentence, german));
            UsageFaults.said(sentence, noting(met));
        }
        Set<String> known = new TreeSet<>(UsageFaults.keys());
        known.removeIf(key -> key.startsWith("fault.hint."));
        assertEquals(known, met);
    }

    /** Returns texts that note which of them is asked for. */
    private static ResourceBundle noting(Set<String> met) {
        return new ResourceBundle() {
            @Override
            protected Object handleGetObject(String key) {
                met.add(key);
                return key;
            }

            @Override
            public Enumeration<String> getKeys() {
                return Collections.emptyEnumeration();
            }
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void aFaultComesWithAHintOrTheUsage(String language) {
        boolean german = language.equals("de");
        String misspelt = said(language, "repot");
        assertTrue(
                misspelt.startsWith(
                        german ? "Unbekanntes Wort an Stelle 0: 'repot'" : "Unmatched argument at index 0: 'repot'"),
                misspelt);
        assertTrue(
                misspelt.endsWith(
                        german
                                ? "War gemeint: ohmstead report oder ohmstead compare?\n"
                                : "Did you mean: ohmstead report or ohmstead compare?\n"),
                misspelt);
        String option = said(language, "report", "--desing", "x");
        assertTrue(option.endsWith(german ? "Möglich sind: --design\n" : "Possible solutions: --design\n"), option);
        String missing = said(language, "load", "find");
        assertTrue(
                missing.startsWith(
                        german
                                ? "Diese Option fehlt: '--target-ohms=R'\nAufruf: ohmstead load find "
                                : "Missing required option: '--target-ohms=R'\nUsage: ohmstead load find "),
                missing);
        assertTrue(missing.contains("[PROJECT]  "), missing);
    }

    private static String said(String language, String... words) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream nowhere = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        int exitCode = Language.speaking(
                Locale.forLanguageTag(language),
                () -> Ohmstead.run(
                        words,
                        nowhere,
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        new ConsoleInput(new ByteArrayInputStream(new byte[0]), false),
                        new FrameworkPlugins(new Console(nowhere, nowhere))));
        assertEquals(ExitCodes.WRONG_USAGE, exitCode);
        return err.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
    }
}
