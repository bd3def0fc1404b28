// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;

class StepWordsTest {
    private Project project;

    @BeforeEach
    void read() throws Exception {
        project = ProjectFile.read(Path.of("../../demo-data/larkspur.ohmstead/project.json"))
                .project();
    }

    private StepWords words(String step) {
        return StepWords.of(project, project.step(step).orElseThrow());
    }

    @Test
    void saysWhatToStrapConnectAndSet() {
        StepWords words = words("stereo-4ohm-14V4");
        assertEquals("4 \u03a9  \u00b7  stereo  \u00b7  14.4 V", words.headline());
        assertEquals("1 kHz sine, up to 1 % THD", words.signal());
        assertEquals(
                "Load \"4ohm\", strapped as 8R||8R each. One branch to each channel."
                        + " Supply 14.40 V at the amplifier's terminals.",
                words.connect());
    }

    @Test
    void saysWhereABridgedLoadGoes() {
        StepWords words = words("bridged-4ohm-12V5");
        assertEquals("4 \u03a9  \u00b7  bridged  \u00b7  12.5 V", words.headline());
        assertEquals("40 Hz sine, up to 1 % THD", words.signal());
        assertEquals(
                "Load \"4ohm\", strapped as 8R||8R. One branch between the two outputs; neither of them is ground."
                        + " Supply 12.50 V at the amplifier's terminals.",
                words.connect());
    }

    @Test
    void saysHowLongBurstsAre() {
        assertEquals(
                "1 kHz bursts, 20 ms of 500 ms, up to 1 % THD",
                words("burst-stereo-4ohm-12V5").signal());
    }
}
