// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;

/**
 * Texts that an Ohmstead wrote which knew nothing of specimens, shapes of parts, stability of meters, heat and leads of loads, verdict
 * rules, prices, check standards and the shared log. The hashes of a log depend on every byte of them.
 */
class EarlierTextsTest {
    // As that Ohmstead reckoned it for the project below.
    private static final String REVISION = "4e634a8427b86b452068720586336a8096febb2451948e6e82cec33a13fac223";

    @TempDir
    Path temporary;

    private static String text(String name) throws IOException {
        try (InputStream content = EarlierTextsTest.class.getResourceAsStream("/earlier/" + name)) {
            return new String(content.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void aReadingStaysAsItWasByteForByte() throws Exception {
        String text = text("earlier-reading.json");
        Reading reading = ReadingJson.fromText(text);
        assertEquals(text, ReadingJson.toCanonicalText(reading));
        assertEquals(Optional.empty(), reading.provenance().specimen());
        ChannelReading channel = reading.channels().get(0);
        assertEquals(List.of(), channel.correlations());
        assertEquals(
                new UncertaintyPart(
                        "output volts meter",
                        1.0 / 3.0,
                        true,
                        PartShape.NORMAL,
                        OptionalDouble.empty(),
                        Optional.empty()),
                channel.uncertaintyParts().get(0));
    }

    @Test
    void figuresStayAsTheyWereByteForByte() throws Exception {
        String text = text("earlier-figures.json");
        MeasuredFigures figures = MeasuredFiguresJson.fromText(text);
        assertEquals(text, MeasuredFiguresJson.toCanonicalText(figures));
        assertEquals(Optional.empty(), figures.provenance().specimen());
    }

    @Test
    void aProjectStaysAsItWasByteForByte() throws Exception {
        String text = text("earlier-project.json");
        Path file = temporary.resolve("project.json");
        Files.writeString(file, text);
        LoadedProject loaded = ProjectFile.read(file);
        Project project = loaded.project();
        assertEquals(List.of(), loaded.problems());
        assertEquals(REVISION, loaded.revisionSha256());
        ProjectFile.write(file, project, Optional.of(loaded.document()));
        assertEquals(text, Files.readString(file));
        ProjectFile.write(file, project, Optional.empty());
        assertEquals(text, Files.readString(file));
    }

    @Test
    void whatAnEarlierProjectDoesNotSayIsAsUsual() throws Exception {
        Path file = temporary.resolve("project.json");
        Files.writeString(file, text("earlier-project.json"));
        Project project = ProjectFile.read(file).project();
        assertTrue(project.bench().meters().stream()
                .allMatch(meter -> meter.stability().equals(MeterStability.NONE)));
        assertTrue(project.loads().stream()
                .flatMap(load -> load.branches().stream())
                .allMatch(branch -> branch.heatingRatio() == 0 && branch.leadStandardUncertaintyOhms() == 0));
        assertEquals(Optional.empty(), project.bench().repeatability());
        assertEquals(Optional.empty(), project.amplifier().price());
        assertEquals(List.of(), project.checkStandards());
        assertEquals(Optional.empty(), project.sharedLog());
        assertEquals(SheetLayout.USUAL, project.sheet().layout());
        VerdictRule rule = project.sheet().rule();
        assertEquals(VerdictKind.GUARDED_ACCEPTANCE, rule.kind());
        assertEquals(0.05, rule.riskRatio(), 1e-15);
    }
}
