// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;

class UnknownFieldsTest {
    @TempDir
    Path temporary;

    private Path file;
    private LoadedProject loaded;

    @BeforeEach
    void readAFileWithUnknownFields() throws Exception {
        file = temporary.resolve("project.json");
        ProjectFile.write(file, Samples.project(), Optional.empty());
        String text = Files.readString(file)
                .replace("\"title\":", "\"odd name\": {\"deep\": [1.50, {\"deeper\": null}]}, \"title\":")
                .replace("\"network\": \"8R2||8R2\"", "\"network\": \"8R2||8R2\", \"wireGauge\": 12")
                .replace("\"id\": \"4ohm\",", "\"id\": \"4ohm\", \"colour\": \"red\",")
                .replace("\"id\": \"2ohm\",", "\"id\": \"2ohm\", \"colour\": \"blue\",")
                .replace("\"id\": \"s2\",", "\"id\": \"s2\", \"asked\": \"by phone\",")
                .replace("\"confidence\": 0.95", "\"confidence\": 0.9500")
                .replace("\"kind\": \"toneBurst\",", "\"kind\": \"toneBurst\", \"shape\": \"square\",")
                .replace("\"ratedAmps\": 30,", "\"ratedAmps\": 30, \"spare\": true,");
        Files.writeString(file, text);
        loaded = ProjectFile.read(file);
    }

    private JsonNode writeAndParse(Project changed) throws Exception {
        ProjectFile.write(file, changed, Optional.of(loaded.document()));
        assertEquals(changed, ProjectFile.read(file).project());
        return new ObjectMapper().readTree(file.toFile());
    }

    private Project withPlan(List<Step> plan) {
        return loaded.project().withPlan(plan);
    }

    @Test
    void eachIsReportedWithItsPath() {
        assertEquals(
                List.of(
                        "$.amplifier.fuses[0].spare",
                        "$.loads[0].branches[0].wireGauge",
                        "$.loads[0].colour",
                        "$.loads[1].colour",
                        "$.plan[1].stimulus.shape",
                        "$.plan[1].asked",
                        "$['odd name']"),
                loaded.problems().stream().map(Problem::where).toList());
        assertTrue(loaded.problems().stream().allMatch(problem -> problem.severity() == Severity.WARNING));
    }

    @Test
    void allAreKeptWhenNothingChanges() throws Exception {
        JsonNode before = new ObjectMapper().readTree(file.toFile());
        assertEquals(before, writeAndParse(loaded.project()));
        String text = Files.readString(file);
        assertTrue(text.contains("1.50"), "an unknown number keeps its digits");
        assertTrue(text.contains("0.9500"), "a number that did not change keeps its digits");
    }

    @Test
    void anEditedEntryKeepsItsOwn() throws Exception {
        List<Step> plan = new ArrayList<>(loaded.project().plan());
        Step old = plan.get(1);
        plan.set(
                1,
                new Step(
                        old.id(),
                        old.mode(),
                        old.loadId(),
                        12.6,
                        new Stimulus.ContinuousSine(500),
                        new EndPoint.FixedLevel(-1),
                        false));
        JsonNode step = writeAndParse(withPlan(plan)).path("plan").get(1);
        assertEquals("by phone", step.path("asked").textValue());
        assertEquals("square", step.path("stimulus").path("shape").textValue());
        assertEquals(12.6, step.path("supplyVolts").doubleValue());
        assertFalse(step.path("stimulus").has("onSeconds"), "a known field of the other kind does not come back");
    }

    @Test
    void reorderedEntriesTakeTheirsAlong() throws Exception {
        List<BenchLoad> loads = new ArrayList<>(loaded.project().loads());
        Collections.reverse(loads);
        JsonNode written = writeAndParse(loaded.project().withLoads(loads)).path("loads");
        assertEquals("blue", written.get(0).path("colour").textValue());
        assertEquals("red", written.get(1).path("colour").textValue());
        assertEquals(
                12, written.get(1).path("branches").get(0).path("wireGauge").intValue());
        assertFalse(written.get(1).path("branches").get(1).has("wireGauge"));
    }

    @Test
    void aRemovedEntryTakesItsOwnAway() throws Exception {
        List<BenchLoad> loads = loaded.project().loads();
        JsonNode written =
                writeAndParse(loaded.project().withLoads(List.of(loads.get(1)))).path("loads");
        assertEquals(1, written.size());
        assertEquals("blue", written.get(0).path("colour").textValue());
        assertFalse(Files.readString(file).contains("wireGauge"));
    }

    @Test
    void aRenamedEntryKeepsItsOwnAndANewOneGetsNone() throws Exception {
        BenchLoad old = loaded.project().loads().get(0);
        BenchLoad renamed = new BenchLoad("four", old.nominalOhms(), old.branches(), old.powerLimitWatts());
        BenchLoad added = new BenchLoad("8ohm", 8, old.branches(), 100);
        JsonNode written = writeAndParse(loaded.project()
                        .withLoads(
                                List.of(added, renamed, loaded.project().loads().get(1))))
                .path("loads");
        assertFalse(written.get(0).has("colour"));
        assertEquals("red", written.get(1).path("colour").textValue());
        assertEquals("blue", written.get(2).path("colour").textValue());
    }

    @Test
    void anOptionalFieldThatWasTakenOutDoesNotComeBack() throws Exception {
        Bench bench = loaded.project().bench();
        Bench without = new Bench(
                bench.place(), bench.supply(), bench.cable(), bench.meters(), bench.parts(), OptionalDouble.empty());
        assertFalse(
                writeAndParse(loaded.project().withBench(without)).path("bench").has("ambientCelsius"));
    }

    @Test
    void theyStayThroughManySaves() throws Exception {
        LoadedProject current = loaded;
        for (int round = 0; round < 3; round++) {
            List<Step> plan = new ArrayList<>(current.project().plan());
            Collections.rotate(plan, 1);
            current = ProjectFile.write(file, current.project().withPlan(plan), Optional.of(current.document()));
        }
        assertEquals(7, current.problems().size());
        assertEquals(
                "by phone",
                new ObjectMapper()
                        .readTree(file.toFile())
                        .path("plan")
                        .get(4)
                        .path("asked")
                        .textValue());
    }

    @Test
    void veryManyAreCountedAndKept() throws Exception {
        StringBuilder many = new StringBuilder();
        for (int index = 0; index < 500; index++) {
            many.append("\"x").append(index).append("\": ").append(index).append(", ");
        }
        Files.writeString(file, Files.readString(file).replace("\"title\":", many + "\"title\":"));
        loaded = ProjectFile.read(file);
        assertEquals(101, loaded.problems().size());
        assertEquals(
                "There are 407 more unknown fields.", loaded.problems().get(100).what());
        assertEquals(499, writeAndParse(loaded.project()).path("x499").intValue());
    }
}
