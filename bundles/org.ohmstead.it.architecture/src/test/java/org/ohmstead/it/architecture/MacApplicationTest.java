// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** What makes an application of the product's folder on macOS: its description, its program, their way to their places. */
@EnabledOnOs(OS.LINUX)
class MacApplicationTest {
    private static final Path FEATURE = Bundles.root().resolve("features/org.ohmstead.feature");
    private static final String ALERT = "osascript was called";

    @TempDir
    private Path folder;

    private FakeMachine machine;
    private Path contents;
    private Path program;

    /** Makes an application folder as the installation leaves it. */
    @BeforeEach
    void install() throws IOException {
        folder = folder.toRealPath();
        machine = new FakeMachine(folder, "dirname", "find", "head", "locale", "mktemp", "readlink", "rm", "sed");
        machine.isA("Darwin", "arm64");
        machine.environment.remove("DISPLAY");
        machine.program("osascript", "echo '" + ALERT + "' >'" + folder.resolve("alert") + "'");
        contents = folder.resolve("All programs/Ohmstead.app/Contents");
        machine.install(contents.resolve("Eclipse"));
        program = Files.createDirectories(contents.resolve("MacOS")).resolve("ohmstead");
        machine.copyBlind(FakeMachine.START.resolve("macos/MacOS/ohmstead"), program);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-psn_0_12345"})
    void aDoubleClickOpensTheWorkbench(String fromTheFinder) throws Exception {
        FakeMachine.Outcome outcome =
                fromTheFinder.isEmpty() ? machine.run(program) : machine.run(program, fromTheFinder);
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals("org.ohmstead.app.workbench", outcome.after("-application"));
        assertEquals("-XstartOnFirstThread", outcome.arguments().get(0));
        assertEquals(List.of(), outcome.words());
        assertTrue(
                outcome.after("-jar")
                        .startsWith(contents.resolve("Eclipse/plugins").toString()),
                outcome.after("-jar"));
    }

    @Test
    void takesTheWordsOfTheCommandLine() throws Exception {
        FakeMachine.Outcome outcome = machine.run(program, "run", "Amp 4.ohmstead", "", "say \"so\"");
        assertEquals("org.ohmstead.cli.application", outcome.after("-application"));
        assertEquals(List.of("=run", "=Amp 4.ohmstead", "=", "=say \"so\""), outcome.words());
        assertEquals(
                "org.ohmstead.app.workbench", machine.run(program, "x.ohmstead").after("-application"));
    }

    @Test
    void aDoubleClickWithoutJavaIsAnsweredInAWindow() throws Exception {
        machine.environment.remove("JAVA_HOME");
        FakeMachine.Outcome outcome = machine.run(program);
        assertEquals(4, outcome.exitCode());
        assertTrue(outcome.message().contains("no Java 17 or newer"), outcome.message());
        assertEquals(List.of(ALERT), Files.readAllLines(folder.resolve("alert")));
    }

    @Test
    void wordsWithoutJavaOpenNoWindow() throws Exception {
        machine.environment.remove("JAVA_HOME");
        assertEquals(4, machine.run(program, "demo").exitCode());
        assertFalse(Files.exists(folder.resolve("alert")), "a window opened");
    }

    @Test
    void theDescriptionNamesTheProgramAndTheVersion() throws Exception {
        Map<String, String> description = description();
        Matcher version = Pattern.compile("<feature [^>]*version=\"([0-9.]+)\\.qualifier\"")
                .matcher(Files.readString(FEATURE.resolve("feature.xml")));
        assertTrue(version.find(), "the feature has no version");
        assertEquals("APPL", description.get("CFBundlePackageType"));
        assertEquals("Ohmstead", description.get("CFBundleName"));
        assertEquals("org.ohmstead.app", description.get("CFBundleIdentifier"));
        assertEquals(version.group(1), description.get("CFBundleShortVersionString"));
        assertEquals(version.group(1), description.get("CFBundleVersion"));
        assertEquals("true", description.get("NSHighResolutionCapable"));
        assertTrue(Files.isExecutable(
                FakeMachine.START.resolve("macos/MacOS").resolve(description.get("CFBundleExecutable"))));
    }

    @Test
    void theInstallationCopiesWhatTheFeatureShips() throws IOException {
        Properties build = properties("build.properties");
        Properties advice = properties("p2.inf");
        assertTrue(List.of(build.getProperty("bin.includes").split(",")).contains("p2.inf"), "p2.inf is left out");
        for (String processor : List.of("x86_64", "aarch64")) {
            assertEquals("start/macos", build.getProperty("root.macosx.cocoa." + processor + ".folder.app-contents"));
        }
        String configure = advice.getProperty("units.0.instructions.configure");
        assertTrue(
                configure.contains("copy(source:${installFolder}/app-contents,target:${installFolder}/..,"), configure);
        assertTrue(
                configure.contains("chmod(targetDir:${installFolder}/../MacOS,targetFile:ohmstead,permissions:755)"),
                configure);
        assertEquals(advice.getProperty("units.0.id"), advice.getProperty("requires.0.name"));
        // Nothing of it may be asked of another system.
        assertEquals("(osgi.os=macosx)", advice.getProperty("requires.0.filter"));
        assertEquals("(osgi.os=macosx)", advice.getProperty("units.0.filter"));
    }

    private static Properties properties(String name) throws IOException {
        Properties properties = new Properties();
        try (Reader in = Files.newBufferedReader(FEATURE.resolve(name))) {
            properties.load(in);
        }
        return properties;
    }

    /** Returns the keys of Info.plist with their texts, a truth value as its name. */
    private static Map<String, String> description() throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        // The definition of the format lies on the network.
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        Element dictionary = (Element) factory.newDocumentBuilder()
                .parse(FakeMachine.START.resolve("macos/Info.plist").toFile())
                .getElementsByTagName("dict")
                .item(0);
        Map<String, String> description = new LinkedHashMap<>();
        String key = null;
        for (Node node = dictionary.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (!(node instanceof Element element)) {
                continue;
            }
            if (element.getTagName().equals("key")) {
                key = element.getTextContent();
            } else {
                String text = element.getTextContent().strip();
                description.put(key, text.isEmpty() ? element.getTagName() : text);
            }
        }
        return description;
    }
}
