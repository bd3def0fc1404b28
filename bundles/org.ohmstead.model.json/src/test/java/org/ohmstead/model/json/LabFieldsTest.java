// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetLayout;

/** Fields of the laboratory around a test, which a project may leave out, and what a reading says of its specimen and budget. */
class LabFieldsTest {
    @TempDir
    Path temporary;

    private Path file;
    private String good;

    @BeforeEach
    void writeAGoodFile() throws Exception {
        file = temporary.resolve("project.json");
        ProjectFile.write(file, Samples.project(), Optional.empty());
        good = Files.readString(file);
    }

    // Each row: what is replaced in the good file, by what, the path that must be named, and what the message must say.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"kind\": \"guardedRejection\"|\"kind\": \"guarded\"|$.sheet.verdictRule.kind|the value is"
                        + " \"guarded\", but one of \"simpleAcceptance\", \"guardedAcceptance\", \"guardedRejection\" is"
                        + " needed: which decisions a guard band makes safer.",
                "\"riskRatio\": 0.025|\"riskRatio\": 5|$.sheet.verdictRule.riskRatio|riskRatio is 5.0; it must be"
                        + " above 0 and at most 0.5 (highest chance of a wrong decision as a ratio, 0.05 for 5 %).",
                "\"riskRatio\": 0.025|\"risk\": 0.025|$.sheet.verdictRule.riskRatio|the field is missing; it needs a"
                        + " number",
                "\"design\": \"handout\"|\"design\": \"poster\"|$.sheet.layout.design|the value is \"poster\", but one"
                        + " of \"bench\", \"full\", \"comparison\", \"handout\" is needed: how the sheet is laid out.",
                "\"paper\": \"letter\"|\"paper\": \"a5\"|$.sheet.layout.paper|one of \"a4\", \"letter\" is needed:"
                        + " what the sheet is printed on.",
                "\"sheets/logo.svg\"|\"../logo.svg\"|$.sheet.layout.logoFile|logoFile is \"../logo.svg\"; it must lie"
                        + " within the project's folder",
                "\"sheets/logo.svg\"|\"C:\\\\logo.svg\"|$.sheet.layout.logoFile|it must lie within the project's"
                        + " folder",
                "\"../heron.ohmstead\"|7|$.sheet.layout.comparedProjects[0]|a text in quotation marks is needed:"
                        + " folders of projects to compare with",
                "\"2025..\"|\" \"|$.sheet.layout.comparedPeriods|comparedPeriods is blank; it needs a text",
                "\"amount\": 249.9|\"amount\": -1|$.amplifier.price.amount|amount is -1.0; it must be a finite number"
                        + " of at least 0",
                "\"currency\": \"EUR\"|\"currency\": \"\"|$.amplifier.price.currency|currency is blank; it needs a"
                        + " text",
                "\"on\": \"2025-11-03\"|\"on\": \"3.11.2025\"|$.amplifier.price.on|a day as \"year-month-day\" is"
                        + " needed: day for which the price holds",
                "\"driftRatioPerYear\": 0.0003|\"driftRatioPerYear\":"
                        + " 3|$.bench.meters[0].stability.driftRatioPerYear|driftRatioPerYear is 3.0; it must lie between"
                        + " 0.0 and 1.0",
                "\"toCelsius\": 27.5|\"toCelsius\": 12|$.bench.meters[0].stability.toCelsius|toCelsius is 12.0; it"
                        + " must lie between 19.0 and 120.0",
                "\"certificateCoverageFactor\": 2.05|\"certificateCoverageFactor\":"
                        + " 0|$.bench.meters[0].stability.certificateCoverageFactor|must be a finite number above 0",
                "\"heatingRatio\": 0.006|\"heatingRatio\": 6|$.loads[0].branches[1].heatingRatio|heatingRatio is 6.0;"
                        + " it must lie between 0.0 and 1.0 (bound on the change of the resistance when hot as a ratio,"
                        + " 0.01 for 1 %).",
                "\"leadStandardUncertaintyOhms\": 0.0015|\"leadStandardUncertaintyOhms\":"
                        + " -1|$.loads[0].branches[0].leadStandardUncertaintyOhms|it must be a finite number of at least"
                        + " 0",
                "\"leadStandardUncertaintyOhms\": 0.0025|\"leadStandardUncertaintyOhms\": \"2"
                        + " mOhm\"|$.loads[0].branches[1].leadStandardUncertaintyOhms|but a number is needed: standard"
                        + " uncertainty of what leads and contacts add in ohms",
                "\"degreesOfFreedom\": 9|\"degreesOfFreedom\": 0|$.bench.repeatability.degreesOfFreedom|it must be a"
                        + " finite number of at least 1.0 (of that standard deviation, 9 for ten powers)",
                "\"id\": \"ten\"|\"id\": \"\"|$.checkStandards[0].id|check standard id is blank; it needs a text",
                "\"baselineCount\": 20|\"baselineCount\": 3|$.checkStandards[0].baselineCount|baselineCount is 3.0; it"
                        + " must lie between 4.0 and 10000.0",
                "\"everyDays\": 1|\"everyDays\": 0.5|$.checkStandards[0].everyDays|but a whole number is needed: after"
                        + " how many days a new value is due",
                "\"significanceRatio\": 0.01|\"significanceRatio\": 1|$.checkStandards[0].significanceRatio|it must be"
                        + " above 0 and at most 0.5",
                "\"figureId\": \"power\"|\"figureId\": 1|$.checkStandards[0].figureId|a text in quotation marks is"
                        + " needed: \"power\", or the id of a measured figure",
                "\"port\": 5433|\"port\": 70000|$.sharedLog.port|port is 70000.0; it must lie between 1.0 and 65535.0",
                "\"host\": \"db.example.org\"|\"host\": 5|$.sharedLog.host|a text in quotation marks is needed: name"
                        + " or address of the database server",
            })
    void namesThePlaceAndWhatWouldBeRight(String from, String to, String path, String sentence) throws Exception {
        assertTrue(good.contains(from), from);
        Files.writeString(file, good.replace(from, to));
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> ProjectFile.read(file));
        assertEquals(path, failure.jsonPath(), failure.getMessage());
        assertTrue(failure.getMessage().contains(sentence), failure.getMessage());
    }

    @Test
    void whatIsTakenOutLeavesNoTrace() throws Exception {
        LoadedProject loaded = ProjectFile.read(file);
        Project project = loaded.project();
        Project without = project.withCheckStandards(List.of())
                .withSharedLog(Optional.empty())
                .withLoads(project.loads().stream()
                        .map(load -> load.withBranches(load.branches().stream()
                                .map(branch -> branch.withHeatingRatio(0).withLeadStandardUncertaintyOhms(0))
                                .toList()))
                        .toList())
                .withSheet(project.sheet().withVerdictRule(Optional.empty()).withLayout(SheetLayout.USUAL))
                .withAmplifier(project.amplifier().withPrice(Optional.empty()))
                .withBench(project.bench()
                        .withRepeatability(Optional.empty())
                        .withMeters(project.bench().meters().stream()
                                .map(meter -> meter.withStability(MeterStability.NONE))
                                .toList()));
        ProjectFile.write(file, without, Optional.of(loaded.document()));
        JsonNode root = new ObjectMapper().readTree(file.toFile());
        assertFalse(root.has("checkStandards"));
        assertFalse(root.has("sharedLog"));
        assertFalse(root.path("sheet").has("verdictRule"));
        assertFalse(root.path("sheet").has("layout"));
        assertFalse(root.path("amplifier").has("price"));
        assertFalse(root.path("bench").has("repeatability"));
        assertFalse(root.path("bench").path("meters").get(0).has("stability"));
        JsonNode branch = root.path("loads").get(0).path("branches").get(0);
        assertTrue(branch.has("network"));
        assertFalse(branch.has("heatingRatio"));
        assertFalse(branch.has("leadStandardUncertaintyOhms"));
        assertEquals(without, ProjectFile.read(file).project());
    }

    @Test
    void unknownFieldsOfACheckStandardGoWithItsId() throws Exception {
        Files.writeString(file, good.replace("\"id\": \"golden\",", "\"id\": \"golden\", \"shelf\": \"top\","));
        LoadedProject loaded = ProjectFile.read(file);
        assertEquals("$.checkStandards[1].shelf", loaded.problems().get(0).where());
        List<CheckStandard> standards = loaded.project().checkStandards();
        Project turned = loaded.project().withCheckStandards(List.of(standards.get(1), standards.get(0)));
        ProjectFile.write(file, turned, Optional.of(loaded.document()));
        JsonNode written = new ObjectMapper().readTree(file.toFile()).path("checkStandards");
        assertEquals("top", written.get(0).path("shelf").textValue());
        assertFalse(written.get(1).has("shelf"));
    }

    // Each row: what is replaced in the good reading, by what, the path that must be named, and what the message must
    // say.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"shape\":\"rectangular\"|\"shape\":\"oblong\"|$.channels[0].uncertaintyParts[1].shape|the value is"
                        + " \"oblong\", but one of \"normal\", \"rectangular\", \"triangular\" is needed: how its values"
                        + " are distributed.",
                "\"input\":\"loadOhms\"|\"input\":\"load\"|$.channels[0].uncertaintyParts[1].input|one of"
                        + " \"outputVolts\", \"loadOhms\", \"supplyVolts\", \"powerWatts\" is needed",
                "\"degreesOfFreedom\":9.5|\"degreesOfFreedom\":0.5|$.channels[0].uncertaintyParts[1].degreesOfFreedom|at"
                        + " least 1.0 (how well it is known, at least 1).",
                "\"coefficient\":-0.25|\"coefficient\":-2|$.channels[0].correlations[0].coefficient|coefficient is"
                        + " -2.0; it must lie between -1.0 and 1.0",
                "\"second\":\"load\"|\"second\":\"output volts meter\"|$.channels[0].correlations[0].second|the same"
                        + " as first; a correlation is between two different parts",
                "\"specimen\":{\"amplifier\":\"Example works"
                        + " Kestrel\"|\"specimen\":{\"amplifier\":\"\"|$.provenance.specimen.amplifier|amplifier is blank;"
                        + " it needs a text",
            })
    void aReadingsNewFieldsAreCheckedToo(String from, String to, String path, String sentence) {
        String text = ReadingJson.toCanonicalText(Samples.reading());
        assertTrue(text.contains(from), text);
        ProjectFileException failure =
                assertThrows(ProjectFileException.class, () -> ReadingJson.fromText(text.replace(from, to)));
        assertEquals(path, failure.jsonPath(), failure.getMessage());
        assertTrue(failure.getMessage().contains(sentence), failure.getMessage());
    }
}
