// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;

/** The word that publishes, with its designs. */
class ReportWordTest {
    private static final List<String> STEPS = List.of("stereo-4ohm-12V5", "stereo-4ohm-14V4");

    @TempDir
    private Path folder;

    private Path project;
    private Path output;

    @BeforeEach
    void measure() throws Exception {
        project = BenchWords.project(folder);
        output = folder.resolve("out");
        Path recordings = BenchWords.recordings(folder, STEPS);
        BenchWords run = run("run", project.toString(), "--replay", recordings.toString());
        assertEquals(0, run.exitCode(), run.err());
    }

    private static BenchWords run(String... words) {
        return BenchWords.run(new BuiltPlugins(), words);
    }

    private BenchWords report(String... more) {
        return run(
                Stream.concat(Stream.of("report", project.toString(), "--output", output.toString()), Stream.of(more))
                        .toArray(String[]::new));
    }

    private String page(String ending) throws IOException {
        try (Stream<Path> files = Files.list(output)) {
            Path page = files.filter(file -> file.getFileName().toString().endsWith(ending))
                    .findFirst()
                    .orElseThrow();
            return Files.readString(page);
        }
    }

    @Test
    void publishesTheDesignThatIsAskedFor() throws Exception {
        assertTrue(report("--design", "bench", "--paper", "letter").exitCode() <= 1);
        assertTrue(page("-bench.html").contains("Bench sheet"));
        assertTrue(report("--design", "handout", "--language", "de").exitCode() <= 1);
        assertTrue(page("-handout-de.html").contains("Bevor Sie umbl\u00e4ttern"));
    }

    @Test
    void aGermanReportStandsBesideTheEnglishOne() throws Exception {
        assertTrue(report("--language", "en").exitCode() <= 1);
        assertTrue(report("--language", "de").exitCode() <= 1);
        String german = page("-de.html");
        assertTrue(german.contains("lang=\"de\"") && german.contains("Die einzelnen Ablesungen"), german);
        assertFalse(german.contains("Every reading"), german);
        try (Stream<Path> files = Files.list(output)) {
            assertEquals(4, files.count());
        }
    }

    @Test
    void comparesWithAnotherProject() throws Exception {
        Path other = Files.createDirectories(folder.resolve("heron.ohmstead"));
        LoadedProject loaded = ProjectFile.read(project);
        ProjectFile.write(
                other,
                loaded.project().withAmplifier(loaded.project().amplifier().withModel("Heron")),
                Optional.empty());
        BenchWords replay = run(
                "run",
                other.toString(),
                "--replay",
                folder.resolve("recordings").toString());
        assertEquals(0, replay.exitCode(), replay.err());
        assertTrue(report("--design", "comparison", "--with", other.toString()).exitCode() <= 1);
        assertTrue(page("-comparison.html").contains("Heron"));
    }

    @Test
    void saysWhatIsWrongWithTheLogoAndPublishesAllTheSame() throws Exception {
        LoadedProject loaded = ProjectFile.read(project);
        SheetLayout layout = SheetLayout.USUAL.withLogoFile("sheets/none.svg");
        ProjectFile.write(
                project,
                loaded.project().withSheet(loaded.project().sheet().withLayout(layout)),
                Optional.of(loaded.document()));
        BenchWords words = report();
        assertTrue(words.exitCode() <= 1, words.err());
        assertTrue(words.err().contains("The logo sheets/none.svg cannot be read"), words.err());
        assertTrue(page(".html").contains("Results sheet"));
    }

    @Test
    void saysWhichChoicesThereAre() {
        for (List<String> wrong : List.of(
                List.of("--design", "poster", "bench, full, comparison or handout"),
                List.of("--paper", "a5", "a4 or letter"),
                List.of("--language", "fr", "en or de"))) {
            BenchWords words = report(wrong.get(0), wrong.get(1));
            assertTrue(words.exitCode() > 1, words.out());
            assertTrue(
                    words.err().contains(wrong.get(0) + " is " + wrong.get(1) + "; it must be " + wrong.get(2)),
                    words.err());
        }
    }
}
