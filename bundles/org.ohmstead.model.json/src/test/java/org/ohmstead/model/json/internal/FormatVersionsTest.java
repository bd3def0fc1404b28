// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Severity;
import org.ohmstead.model.json.ProjectFileException;

class FormatVersionsTest {
    private static final FormatVersions THREE = new FormatVersions(
            3,
            List.of(
                    root -> {
                        root.set("second", root.remove("first"));
                        return root;
                    },
                    root -> root.put("second", root.path("second").textValue() + "+")));

    private static ObjectNode migrate(String json, Findings findings) throws ProjectFileException {
        JsonSource source = JsonSource.ofText("x.json", json);
        return THREE.migrate(source, source.parse(), findings);
    }

    @Test
    void goesThroughEveryStepInOrder() throws Exception {
        Findings findings = new Findings();
        assertEquals(
                "{\"formatVersion\":3,\"second\":\"a+\"}",
                CanonicalWriter.write(migrate("{\"formatVersion\":1,\"first\":\"a\"}", findings)));
        assertEquals(Severity.NOTE, findings.problems().get(0).severity());
        assertEquals(
                "The file is of format version 1; it was read as version 3.",
                findings.problems().get(0).what());
    }

    @Test
    void beginsAtTheFilesOwnVersion() throws Exception {
        assertEquals(
                "b+",
                migrate("{\"formatVersion\":2,\"second\":\"b\"}", new Findings())
                        .path("second")
                        .textValue());
    }

    @Test
    void leavesTheCurrentVersionAlone() throws Exception {
        JsonSource source = JsonSource.ofText("x.json", "{\"formatVersion\":3,\"second\":\"c\"}");
        JsonNode root = source.parse();
        Findings findings = new Findings();
        assertSame(root, THREE.migrate(source, root, findings));
        assertTrue(findings.problems().isEmpty());
    }

    @Test
    void refusesANewerVersion() {
        ProjectFileException failure =
                assertThrows(ProjectFileException.class, () -> migrate("{\"formatVersion\":4}", new Findings()));
        assertTrue(failure.getMessage().contains("of format version 4, but this Ohmstead reads versions up to 3"));
    }

    @Test
    void needsAStepForEachOlderVersion() {
        assertThrows(IllegalArgumentException.class, () -> new FormatVersions(2, List.of()));
    }
}
