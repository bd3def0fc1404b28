// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SheetLogoTest {
    static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 120 40' width='120' height='40'>%s"
            + "<rect x='0' y='0' width='60' height='40' fill='#c00000'/></svg>";

    @TempDir
    Path folder;

    private SheetLogo svg(String inner) throws Exception {
        Files.writeString(folder.resolve("logo.svg"), String.format(SVG, inner));
        return SheetLogo.read(folder, "logo.svg");
    }

    private static String shown(SheetLogo logo) {
        String address = logo.dataAddress();
        return new String(
                Base64.getDecoder().decode(address.substring(address.indexOf(',') + 1)), StandardCharsets.UTF_8);
    }

    private static byte[] picture(String format, int width, int height) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < width; x++) {
            image.setRGB(x, height / 2, 0x00aa00);
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        assertTrue(ImageIO.write(image, format, bytes));
        return bytes.toByteArray();
    }

    private String refusal(String file) {
        String message = assertThrows(ReportException.class, () -> SheetLogo.read(folder, file))
                .getMessage();
        assertTrue(message.contains(file) && message.endsWith("."), message);
        return message;
    }

    @ParameterizedTest
    @CsvSource({"a.png, png, image/png", "b.JPG, jpeg, image/jpeg", "c.jpeg, png, image/png"})
    void showsPicturesByWhatTheyHold(String name, String format, String mediaType) throws Exception {
        Files.write(folder.resolve(name), picture(format, 80, 40));
        SheetLogo logo = SheetLogo.read(folder, name);
        assertEquals(2, logo.aspectRatio(), 1e-9);
        assertTrue(logo.dataAddress().startsWith("data:" + mediaType + ";base64,"));
    }

    @Test
    void drawsShapesWhereTheyBelong() throws Exception {
        BufferedImage image = new BufferedImage(240, 80, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, 240, 80);
        SheetLogo logo = svg("");
        assertEquals(3, logo.aspectRatio(), 1e-6);
        logo.draw(graphics, 240, 80);
        graphics.dispose();
        assertEquals(0xc00000, image.getRGB(60, 40) & 0xffffff, "in the rectangle");
        assertEquals(0xffffff, image.getRGB(180, 40) & 0xffffff, "beside it");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "<g onload='alert(1)'/>",
                "<a href='https://example.org/'><circle r='3'/></a>",
                "<use href='https://example.org/x.svg#a'/>",
                "<use xmlns:xlink='http://www.w3.org/1999/xlink' xlink:href='file:///etc/hostname'/>",
                "<circle r='3' fill='url(https://example.org/x.svg#a)'/>",
                "<circle r='3' style='fill:url( &quot;//example.org/x#a&quot;)'/>",
                "<style>@import 'https://example.org/x.css';</style>",
                "<style>circle { fill: url(https://example.org/x) }</style>",
                "<animate attributeName='href' to='javascript:alert(1)'/>",
                "<set attributeName='x' to='javascript:alert(1)'/>",
                "<x xmlns='urn:example'>alert(1)</x>",
                "<?xml-stylesheet href='https://example.org/x.css'?>",
                "<circle r='3' data-x='https://example.org/'/>"
            })
    void leavesNothingThatRunsOrReachesOut(String inner) throws Exception {
        String left = shown(svg(inner));
        for (String bad :
                new String[] {"script", "alert", "example", "file:", "import", "onload", "animate", "stylesheet"}) {
            assertFalse(left.contains(bad), bad + " in " + left);
        }
        assertTrue(left.contains("#c00000"), left);
    }

    @Test
    void keepsWhatStaysWithinTheDrawing() throws Exception {
        String left =
                shown(svg("<defs><linearGradient id='g'><stop offset='0' stop-color='#123456'/></linearGradient><circle"
                        + " id='c' r='3'/></defs><style>.k { fill: #abcdef }</style><use href='#c' class='k'"
                        + " fill='url(#g)'/>"));
        for (String good : new String[] {"#123456", "#abcdef", "href=\"#c\"", "url(#g)"}) {
            assertTrue(left.contains(good), good + " in " + left);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "<text>Lab</text>, text",
        "<image href='x.png'/>, image",
        "<foreignObject/>, foreignObject",
        "<filter/>, filter"
    })
    void refusesWhatWouldBeMissed(String inner, String element) throws Exception {
        Files.writeString(folder.resolve("logo.svg"), String.format(SVG, inner));
        assertTrue(refusal("logo.svg").contains("\"" + element + "\""));
    }

    @Test
    void refusesPartsThatUsePartsInTurn() throws Exception {
        Files.writeString(
                folder.resolve("logo.svg"),
                String.format(
                        SVG,
                        "<defs><g id='a'><circle r='3'/></g><g id='b'><use href='#a'/></g></defs><use href='#b'/>"));
        assertTrue(refusal("logo.svg").contains("use parts in turn"));
    }

    @Test
    void refusesEntities() throws Exception {
        Files.writeString(
                folder.resolve("logo.svg"),
                "<!DOCTYPE svg [<!ENTITY x SYSTEM 'file:///etc/hostname'>]>" + String.format(SVG, "<desc>&x;</desc>"));
        assertTrue(refusal("logo.svg").contains("entities"));
    }

    @Test
    void saysWhatIsWrongWithOtherFiles() throws Exception {
        assertTrue(refusal("missing.png").contains("Check that the file is there"));
        Files.writeString(folder.resolve("words.png"), "no picture");
        assertTrue(refusal("words.png").contains("not a PNG or JPEG picture"));
        Files.writeString(folder.resolve("words.svg"), "no drawing");
        assertTrue(refusal("words.svg").contains("not a whole SVG drawing"));
        Files.writeString(folder.resolve("page.svg"), "<html/>");
        assertTrue(refusal("page.svg").contains("not an SVG drawing"));
        Files.writeString(
                folder.resolve("empty.svg"), "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>");
        assertTrue(refusal("empty.svg").contains("no shape"));
        Files.writeString(folder.resolve("logo.gif"), "GIF89a");
        assertTrue(refusal("logo.gif").contains("none of PNG, JPEG and SVG"));
        Files.write(folder.resolve("gif.png"), picture("gif", 8, 8));
        assertTrue(refusal("gif.png").contains("but gif"));
        Files.write(folder.resolve("cut.png"), Arrays.copyOf(picture("png", 80, 80), 60));
        assertTrue(refusal("cut.png").contains("damaged"));
        Files.write(folder.resolve("large.png"), new byte[SheetLogo.MOST_BYTES + 1]);
        assertTrue(refusal("large.png").contains("at most 512 KB"));
        Files.write(folder.resolve("wide.png"), picture("png", SheetLogo.MOST_PIXELS + 1, 1000));
        assertTrue(refusal("wide.png").contains("4001 x 1000 pixels"));
        Files.write(folder.resolve("thin.png"), picture("png", 130, 10));
        assertTrue(refusal("thin.png").contains("long and narrow"));
    }

    @Test
    void staysWithinTheProjectsFolder(@TempDir Path elsewhere) throws Exception {
        Path secret = Files.write(elsewhere.resolve("secret.png"), picture("png", 8, 8));
        Files.createSymbolicLink(folder.resolve("link.png"), secret);
        assertTrue(refusal("link.png").contains("outside the project's folder"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\\\\computer\\share\\logo.png", "//computer/share/logo.png"})
    void anotherComputerIsNotEvenAsked(String file) {
        assertTrue(refusal(file).contains("outside the project's folder"));
    }

    @Test
    void aPipeKeepsNobodyWaiting() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "this system has no named pipes");
        new ProcessBuilder("mkfifo", folder.resolve("logo.png").toString())
                .start()
                .waitFor();
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> refusal("logo.png"));
    }
}
