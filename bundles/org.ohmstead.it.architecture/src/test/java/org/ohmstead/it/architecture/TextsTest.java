// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the user reads lies in message files, in each language that is spoken. */
class TextsTest {
    private static final String ENGLISH = "messages.properties";
    private static final String GERMAN = "messages_de.properties";
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)[,}]");
    /** A character, which may be a quotation mark, or a text with its quotation marks. */
    private static final Pattern LITERAL =
            Pattern.compile("'(?:[^'\\\\\\n]|\\\\.[^']*)'|\"((?:[^\"\\\\\\n]|\\\\.)*)\"");

    private static final Pattern TWO_WORDS = Pattern.compile("\\p{L}{2,},? \\p{L}{2,}");

    /** Statements whose texts are for programmers, and annotations. */
    private static final Pattern FOR_PROGRAMMERS = Pattern.compile(
            "new (?:\\w+\\.)*(?:IllegalArgument|IllegalState|UnsupportedOperation|NoSuchElement|UncheckedIO|Cancellation|Assertion)\\w*(?:Exception|Error)"
                    + "|requireNonNull|\\b(?:Checks|Require)\\.\\w+\\(|Platform\\.getLog|\\.error\\(|\\.warn\\(|\\.log\\(|Status\\.error|SuppressWarnings");

    /** Bundles without a face whose sentences are all in message files. */
    private static final Set<String> CORES = Set.of(
            "org.ohmstead.curves",
            "org.ohmstead.exchange",
            "org.ohmstead.history",
            "org.ohmstead.jobs",
            "org.ohmstead.lessons",
            "org.ohmstead.load",
            "org.ohmstead.measure",
            "org.ohmstead.measure.scpi",
            "org.ohmstead.metrology",
            "org.ohmstead.model",
            "org.ohmstead.model.json",
            "org.ohmstead.plot",
            "org.ohmstead.testlog.shared",
            "org.ohmstead.thermal",
            "org.ohmstead.units");

    /**
     * What goes into files, logs, databases and instruments, which reads the same everywhere; and what is compared with a record's refusals,
     * or a parser's.
     */
    private static final Pattern STORED = Pattern.compile(String.join(
            "|",
            "LogWorkbook\\.java: .*",
            "CsvDialect\\.java: # Ohmstead table: .*",
            "(LogLines|ImportedRow)\\.java: \\W*(Imported from|There it is entry|with the hash|found by) .*",
            "ImportedRow\\.java: as stated in the imported table",
            "SheetRows\\.java: yyyy-mm-dd hh:mm:ss\\.000",
            "XlsxTable\\.java: a reference to something outside",
            "(SharedLab|ChainTable|Lab[GMS]\\w+)\\.java:  ?(SELECT|INSERT|VALUES|CREATE|REVOKE|SHOW|JOIN|WHERE|\\w+"
                    + " text) .*",
            "Causes\\.java: correction to the nominal load",
            "TypedCheck\\.java: (A value of the check standard|.*, typed in\\. Mode, load) .*",
            "DemoProject\\.java: Ohmstead's demo makes .*",
            "(BenchOpener|Generator|InstrumentRole|Multimeter|Oscilloscope|PowerSupply)\\.java:"
                    + " (set|measure|output|read) [a-z ]+",
            "CommandSetReader\\.java: (number|block) ?\\(.*",
            "Recorder\\.java: (oscilloscope at |command set %s, .*)",
            "NetworkSvg\\.java: .*[<>=].*",
            "LockOwner\\.java: (process \\(.*|a computer without a name)",
            "Refusal\\.java: \\(\\.\\+\\) is .*",
            "TreeParser\\.java: Unexpected end-of-input"));

    /**
     * Two words that nobody reads: names of threads and folders, forms of dates, queries, what is compared with a model's refusals; and
     * what is logged, or typed.
     */
    private static final Pattern NOT_SHOWN =
            Pattern.compile("\\w+\\.java: [Oo]hmstead [a-z ]+|\\w+\\.java: Ohmstead charts"
                    + "|\\w+\\.java: [yu]{4}-MM-dd HH:mm(:ss)?|\\w+\\.java: \\w+:\\w+ \\w+:\\w+|Refusals\\.java: .*"
                    + "|RunOptions\\.java: (confirmed on the command line with --yes|somebody who gave no name)"
                    + "|EmergencyHook\\.java: , by ending the program|PluginsShowCommand\\.java: true, false");

    /** Words and options of the command line as they are declared; they are described by files of their own. */
    private static final Pattern DECLARED = Pattern.compile(
            "@(?:\\w+\\.)*(?:Command|Option|Parameters)\\((?:[^()\"]++|\"(?:[^\"\\\\]|\\\\.)*+\"|\\([^()]*+\\))*+\\)");

    private static List<Path> files(Path bundle, String folder, String ending) throws IOException {
        Path start = bundle.resolve(folder);
        if (!Files.isDirectory(start)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(start)) {
            return all.filter(file -> file.getFileName().toString().endsWith(ending))
                    .sorted()
                    .toList();
        }
    }

    private static Map<String, String> texts(Path file) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = Files.newBufferedReader(file)) {
            texts.load(reader);
        }
        Map<String, String> sorted = new TreeMap<>();
        texts.forEach((key, text) -> sorted.put(key.toString(), text.toString()));
        return sorted;
    }

    private static Set<String> places(String text) {
        Set<String> places = new TreeSet<>();
        Matcher place = PLACE.matcher(text);
        while (place.find()) {
            places.add(place.group(1));
        }
        return places;
    }

    @Test
    void everyTextIsThereInBothLanguages() throws IOException {
        int found = 0;
        for (Path bundle : Bundles.all()) {
            for (Path file : files(bundle, "src/main/resources", ENGLISH)) {
                Map<String, String> english = texts(file);
                Map<String, String> german = texts(file.resolveSibling(GERMAN));
                assertEquals(english.keySet(), german.keySet(), file.toString());
                english.forEach((key, text) -> {
                    String where = file + " " + key;
                    assertEquals(places(text), places(german.get(key)), where);
                    new MessageFormat(text, Locale.ENGLISH);
                    new MessageFormat(german.get(key), Locale.GERMAN);
                    assertTrue(text.isBlank() || !german.get(key).isBlank(), where);
                });
                found += english.size();
            }
        }
        assertTrue(found > 3000, found + " texts");
    }

    @Test
    void anApostropheIsWrittenTwice() throws IOException {
        List<String> wrong = new ArrayList<>();
        for (Path bundle : Bundles.all()) {
            for (Path file : files(bundle, "src/main/resources", ".properties")) {
                String name = file.getFileName().toString();
                if (name.startsWith("messages")) {
                    texts(file).forEach((key, text) -> {
                        // What is left when doubled ones and those around a brace are taken out.
                        if (text.replace("''", "").replaceAll("'[{}]+'", "").contains("'")) {
                            wrong.add(file.getFileName() + " " + key + ": " + text);
                        }
                    });
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void noPartKeepsItsTextsInTheCode() throws IOException {
        List<String> left = new ArrayList<>();
        for (Path bundle : Bundles.all()) {
            String name = bundle.getFileName().toString();
            boolean face =
                    name.endsWith(".ui") || name.matches("org\\.ohmstead\\.(app|cli|workbench|workbench\\.sample)");
            if (face || CORES.contains(name)) {
                for (Path file : files(bundle, "src/main/java", ".java")) {
                    for (String text : textsOf(Files.readString(file))) {
                        String line = file.getFileName() + ": " + text;
                        if (!NOT_SHOWN.matcher(line).matches()
                                && !STORED.matcher(line).matches()) {
                            left.add(line);
                        }
                    }
                }
            }
        }
        assertEquals(List.of(), left);
    }

    /** Returns what stands in the code for a reader, statement by statement. */
    private static List<String> textsOf(String source) {
        List<String> found = new ArrayList<>();
        String code = source.replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)(^|\\s)//.*$", "");
        code = DECLARED.matcher(code).replaceAll("");
        for (String statement : code.split("(?<=[;{}])\\s*\\n")) {
            if (FOR_PROGRAMMERS.matcher(statement).find()) {
                continue;
            }
            Matcher literal = LITERAL.matcher(statement);
            while (literal.find()) {
                String text = literal.group(1);
                if (text != null && TWO_WORDS.matcher(text).find()) {
                    found.add(text);
                }
            }
        }
        return found;
    }
}
