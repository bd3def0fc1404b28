// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.MalformedURLException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.RGB;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.workbench.look.Tones;

class DrawingsTest {
    /** WCAG 2.2, 1.4.11: parts of a picture that one must see stand out by 3 to 1. */
    private static final double LEAST_CONTRAST = 3.0;

    private static final RGB WHITE = new RGB(0xFF, 0xFF, 0xFF);
    private static final RGB DARK = new RGB(0x2B, 0x2B, 0x2B);

    static Stream<Path> icons() throws IOException, URISyntaxException {
        try (Stream<Path> files = Files.list(iconFolder())) {
            return files.filter(file -> file.toString().endsWith(".svg")).toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("icons")
    void drawsTheIconAtBothScales(Path file) throws MalformedURLException {
        for (int zoom : new int[] {100, 200}) {
            ImageData data = ImageDescriptor.createFromURL(file.toUri().toURL()).getImageData(zoom);
            assertNotNull(data, file + " at " + zoom);
            assertEquals(16 * zoom / 100, data.width);
            assertEquals(16 * zoom / 100, data.height);
            assertTrue(share(data) > 0.03 && share(data) < 0.9, "something is drawn, with air around it");
        }
    }

    @ParameterizedTest
    @MethodSource("icons")
    void standsOutOnLightAndOnDark(Path file) throws IOException {
        Matcher colours = Pattern.compile("(?:stroke|fill)=\"#([0-9a-f]{6})\"").matcher(Files.readString(file));
        Set<Integer> seen = new TreeSet<>();
        while (colours.find()) {
            seen.add(Integer.parseInt(colours.group(1), 16));
        }
        assertTrue(!seen.isEmpty(), "an icon has colours");
        for (int colour : seen) {
            RGB rgb = new RGB(colour >> 16, colour >> 8 & 0xFF, colour & 0xFF);
            assertTrue(Tones.contrast(rgb, WHITE) >= LEAST_CONTRAST, () -> file + " on white: " + rgb);
            assertTrue(Tones.contrast(rgb, DARK) >= LEAST_CONTRAST, () -> file + " on dark: " + rgb);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 32, 48, 64, 128, 256})
    void hasTheMarkForWindows(int size) {
        ImageData data = data("/branding/mark-" + size + ".png");
        assertEquals(size, data.width);
        assertEquals(size, data.height);
    }

    @Test
    void hasTheOpeningAndTheAboutPicture() {
        assertEquals(600, data("/branding/splash.png").width);
        assertEquals(340, data("/branding/splash.png").height);
        assertTrue(data("/branding/about.png").width <= 250);
        assertTrue(data("/branding/about.png").height <= 330);
    }

    @Test
    void givesIconsByNameAndRefusesOthers() {
        assertEquals(16, Pictures.icon("save").getBounds().width);
        assertEquals(64, Pictures.mark().getBounds().width);
        assertThrows(IllegalArgumentException.class, () -> Pictures.icon("none"));
    }

    private static double share(ImageData data) {
        int drawn = 0;
        for (int y = 0; y < data.height; y++) {
            for (int x = 0; x < data.width; x++) {
                drawn += data.getAlpha(x, y) > 60 ? 1 : 0;
            }
        }
        return (double) drawn / (data.width * data.height);
    }

    private static ImageData data(String place) {
        return new ImageData(DrawingsTest.class.getResourceAsStream(place));
    }

    /** Other bundles have icons too; only this one has the mark. */
    private static Path iconFolder() throws URISyntaxException {
        Path mark = Path.of(DrawingsTest.class.getResource("/branding/mark.svg").toURI());
        return mark.getParent().resolveSibling("icons");
    }
}
