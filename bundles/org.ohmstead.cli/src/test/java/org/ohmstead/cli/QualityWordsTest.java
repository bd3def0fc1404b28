// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.history.quality.TypedCheck;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;

/** The words about check standards, and what they do to a run. */
class QualityWordsTest {
    private static final String STEP = "stereo-8ohm-11V5";
    private static final CheckStandard SHUNT = new CheckStandard(
            "shunt",
            "Reference shunt",
            "",
            "resistance",
            "",
            "\u03a9",
            4,
            0.01,
            OptionalDouble.of(0.01),
            OptionalDouble.of(0.00002),
            0);

    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void makeProject() throws Exception {
        project = BenchWords.project(folder);
    }

    private void has(CheckStandard... standards) throws Exception {
        LoadedProject loaded = ProjectFile.read(project);
        ProjectFile.write(project, loaded.project().withCheckStandards(List.of(standards)), Optional.empty());
    }

    private BenchWords run(String... words) {
        return BenchWords.run(new BuiltPlugins(), words);
    }

    private BenchWords check(String value, String... more) {
        List<String> words = new ArrayList<>(List.of("log", "check", project.toString(), "shunt", value));
        words.addAll(List.of("--operator", "N. N."));
        words.addAll(List.of(more));
        return run(words.toArray(String[]::new));
    }

    @Test
    void aTypedInValueIsLoggedInTheStandardsUnit() throws Exception {
        has(SHUNT);
        BenchWords done = check("10.01 mohm", "--uncertainty", "0.02 mohm");
        assertEquals(0, done.exitCode(), done.err());
        assertTrue(done.out().startsWith("F0001 holds the value of \"Reference shunt\"."), done.out());
        assertTrue(done.out().contains("Reference shunt: nothing speaks against the bench."), done.out());
        LogEntry entry = BenchWords.log(project).get(0);
        assertEquals(0.01001, entry.figures().orElseThrow().figures().get(0).value(), 1e-15);
        assertEquals(
                "org.ohmstead.check-standard", entry.figures().orElseThrow().measurementId());
        assertEquals("N. N.", entry.figures().orElseThrow().provenance().operator());
    }

    @Test
    void anEnNumberBeyondOneEndsWithOne() throws Exception {
        has(SHUNT);
        BenchWords done = check("10.1 mohm", "--uncertainty", "0.02 mohm", "--json");
        assertEquals(1, done.exitCode(), done.err());
        JsonNode standard = done.json().get("standard");
        // ISO/IEC 17043: 0.1 over the root of 0.04 squared and 0.04 squared.
        assertEquals(
                0.1 / Math.hypot(0.04, 0.04), standard.at("/reference/enNumber").asDouble(), 1e-9);
        assertFalse(standard.get("mayRun").asBoolean());
        assertTrue(standard.at("/findings/0/serious").asBoolean());
    }

    @Test
    void refusesWhatIsNoValueOrNoStandard() throws Exception {
        has();
        BenchWords none = check("1");
        assertEquals(3, none.exitCode());
        assertTrue(none.err().contains("has no check standards"), none.err());
        has(SHUNT);
        assertEquals(3, check("ten").exitCode());
        assertEquals(3, check("10 V").exitCode());
        assertEquals(3, check("0.01", "--uncertainty", "-1").exitCode());
        BenchWords other = run("log", "check", project.toString(), "other", "1", "--operator", "N. N.");
        assertEquals(3, other.exitCode());
        assertTrue(other.err().contains("It has shunt."), other.err());
        assertEquals(
                3,
                run("log", "check", project.toString(), "shunt", "1", "--operator", " ")
                        .exitCode());
        assertEquals(2, run("log", "check", project.toString(), "shunt", "1").exitCode());
    }

    @Test
    void aNegativeValueStandsBehindTwoDashes() throws Exception {
        has(new CheckStandard(
                "gain",
                "Attenuator",
                "",
                "gain",
                "",
                "dB",
                4,
                0.01,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0));
        BenchWords done = run("log", "check", project.toString(), "--operator", "N. N.", "--", "gain", "-3.01");
        assertEquals(0, done.exitCode(), done.err());
        assertEquals(
                -3.01,
                BenchWords.log(project)
                        .get(0)
                        .figures()
                        .orElseThrow()
                        .figures()
                        .get(0)
                        .value());
    }

    @Test
    void theTableShowsLimitsAndStateOfEachStandard() throws Exception {
        has(SHUNT);
        for (String value : List.of("0.0100", "0.0102", "0.0100", "0.0102")) {
            assertEquals(0, check(value, "--uncertainty", "0.0005").exitCode());
        }
        BenchWords quality = run("log", "quality", project.toString(), "--notes");
        assertEquals(0, quality.exitCode(), quality.err());
        assertTrue(quality.out().contains("in order"), quality.out());
        JsonNode standard =
                run("log", "quality", project.toString(), "--json").json().at("/standards/0");
        assertEquals(4, standard.get("values").size());
        // Closed form: mean 0.0101, mean moving range 0.0002, limits at 3/1.128 of it (e-Handbook 6.3.2.2).
        assertEquals(0.0101, standard.at("/limits/centre").asDouble(), 1e-12);
        assertEquals(0.0101 + 0.0002 * 3 / 1.128, standard.at("/limits/upper").asDouble(), 5e-7);
        BenchWords out = check("0.0120", "--uncertainty", "0.0005");
        assertEquals(1, out.exitCode());
        BenchWords alarm = run("log", "quality", project.toString(), "shunt");
        assertEquals(1, alarm.exitCode());
        assertTrue(
                alarm.out().contains("not to be used") && alarm.out().contains("WARNING  Reference shunt: "),
                alarm.out());
    }

    @Test
    void anOverdueStandardHoldsARunUpUntilSomebodySaysYes() throws Exception {
        CheckStandard daily = SHUNT.withEveryDays(1);
        has(daily);
        BenchWords never = run("log", "quality", project.toString());
        assertEquals(0, never.exitCode());
        assertTrue(never.out().contains("never measured"), never.out());
        LoadedProject loaded = ProjectFile.read(project);
        try (TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME))) {
            log.append(
                    new TypedCheck(daily, 0.01, OptionalDouble.empty(), "N. N.", Instant.parse("2026-03-02T09:00:00Z"))
                            .figures(loaded.project(), loaded.revisionSha256(), "0.1.0"));
        }
        BenchWords quality = run("log", "quality", project.toString());
        assertEquals(1, quality.exitCode());
        assertTrue(quality.out().contains("due since 2026-03-03"), quality.out());
        JsonNode dry = run("run", project.toString(), "--step", STEP, "--dry-run", "--json")
                .json();
        boolean asked = false;
        for (JsonNode problem : dry.at("/items/0/problems")) {
            asked |= problem.get("what").asText().contains("Reference shunt")
                    && problem.get("needsYes").asBoolean();
        }
        assertTrue(asked, dry.toString());
        BenchWords refused = run("run", project.toString(), "--step", STEP, "--driver", "simulated");
        assertEquals(1, refused.exitCode());
        assertTrue(refused.err().contains("due since 2026-03-03"), refused.err());
        assertEquals(1, BenchWords.log(project).size());
        BenchWords confirmed =
                run("run", project.toString(), "--step", STEP, "--driver", "simulated", "--yes", "--operator", "N. N.");
        assertEquals(0, confirmed.exitCode(), confirmed.err());
        assertTrue(BenchWords.log(project).stream()
                .flatMap(entry -> entry.note().stream())
                .anyMatch(note -> note.text().contains("Reference shunt")));
    }
}
