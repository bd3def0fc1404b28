// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.stimulus.SoundOutput;
import picocli.CommandLine;

class SignalWordsTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    Path folder;

    private int run(String... words) {
        out.reset();
        err.reset();
        return Ohmstead.run(words, new PrintStream(out), new PrintStream(err));
    }

    private JsonNode json() throws Exception {
        return new ObjectMapper().readTree(out.toString(StandardCharsets.UTF_8));
    }

    private String text() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String errors() {
        return err.toString(StandardCharsets.UTF_8);
    }

    private String path(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void listsTheKindsWithTheirSettings() throws Exception {
        assertEquals(0, run("signal", "list"));
        assertTrue(text().contains("tone-bursts") && text().contains("period=\"500 ms\""), text());
        assertEquals(0, run("signal", "list", "--json"));
        assertEquals(9, json().path("kinds").size());
        assertEquals("sine", json().path("kinds").get(0).path("kind").textValue());
    }

    @Test
    void makesASineThatTheAnalysisFindsAgain() throws Exception {
        String file = path("tone.wav");
        assertEquals(
                0,
                run(
                        "signal",
                        "make",
                        "sine",
                        file,
                        "frequency=997Hz",
                        "level=0",
                        "length=2s",
                        "--overlap-db",
                        "3",
                        "--channels",
                        "mono",
                        "--json"));
        assertEquals(-3, json().path("rmsDbfs").doubleValue(), 1e-12);
        assertEquals(96_000, json().path("frames").intValue());
        assertTrue(json().path("seamless").booleanValue());
        assertTrue(json().path("cautions").size() > 0);
        assertEquals(0, run("analyze", file, "--volts-per-full-scale", "1", "--load-ohms", "1", "--json"));
        JsonNode channel = json().path("channels").get(0);
        assertEquals(997, channel.path("frequencyHz").doubleValue(), 1e-6);
        // Closed form: a sine of peak p into 1 ohm is p^2 / 2.
        assertEquals(Math.pow(10, -0.3) / 2, channel.path("powerWatts").doubleValue(), 1e-7);
        assertTrue(channel.path("sinadDb").doubleValue() > 138, channel.toString());
    }

    @Test
    void aBurstWithoutAWholeCycleFallsShort() {
        assertEquals(1, run("signal", "make", "tone-bursts", path("low.wav"), "frequency=30", "length=2s"));
        assertTrue(text().contains("0.6 of a cycle"), text());
        assertTrue(text().contains("Caution: Take the loudspeakers off"), text());
        assertTrue(Files.exists(folder.resolve("low.wav")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "hum; level=0; no kind of signal",
                "sine; level=3; -140 to 0 dB",
                "sine; crest=12; no setting of sine",
                "sine; 1000; is no setting",
                "sine; frequency=30kHz; half of that",
                "multi-tone; level=0; above full scale",
            })
    void refusesWhatCannotBeMade(String kind, String setting, String part) {
        assertEquals(3, run("signal", "make", kind, path("never.wav"), setting));
        assertTrue(errors().contains(part), errors());
        assertFalse(Files.exists(folder.resolve("never.wav")));
    }

    @Test
    void refusesOptionsOutOfRange() {
        assertEquals(3, run("signal", "make", "sine", path("a.wav"), "--samples", "20"));
        assertTrue(errors().contains("16, 24, 32 or float"), errors());
        assertEquals(3, run("signal", "make", "sine", path("a.wav"), "--channels", "middle"));
        assertTrue(errors().contains("right-inverted"), errors());
        assertEquals(3, run("signal", "make", "sine", path("a.wav"), "--sample-rate-hz", "48000.5"));
        assertEquals(2, run("signal", "make", "sine"));
    }

    @Test
    void aRecordingIsAlignedAndCut() throws Exception {
        String played = path("played.wav");
        assertEquals(0, run("signal", "make", "sine", played, "length=2s", "--markers", "--channels", "mono"));
        Waveform file =
                WavFile.read(Path.of(played), new double[] {1}).channels().get(0);
        double[] samples = new double[file.size() + 12_345];
        for (int i = 0; i < file.size(); i++) {
            samples[i + 12_345] = -1.5 * file.voltsAt(i);
        }
        Path recording = folder.resolve("recording.wav");
        WavFile.writeFloat(
                recording, new Capture(List.of(Waveform.of(48_000, samples)), "recording", ""), new double[] {1});
        String cut = path("cut.wav");
        assertEquals(0, run("signal", "align", recording.toString(), "--played", played, "--cut", cut, "--json"));
        // Half a second of silence, marker, gap, leader and gap: 2.5 s before the signal.
        assertEquals(2.5 + 12_345 / 48_000.0, json().path("signalFromSeconds").doubleValue(), 1e-6);
        assertEquals(1, json().path("clockRatio").doubleValue(), 1e-7);
        assertEquals(1.5, json().path("gainRatio").doubleValue(), 1e-4);
        assertTrue(json().path("inverted").booleanValue());
        Waveform part = WavFile.read(Path.of(cut), new double[] {1}).channels().get(0);
        assertEquals(96_000, part.size());
        assertEquals(-1.5 * Math.pow(10, -0.5), part.voltsAt(12), 1e-5);
        assertEquals(0, run("signal", "align", recording.toString(), "--played", played));
        assertTrue(text().contains("polarity inverted"), text());
    }

    @Test
    void whatIsNotThereIsNotFound() throws Exception {
        String played = path("played.wav");
        String plain = path("plain.wav");
        run("signal", "make", "sine", played, "length=1s", "--markers");
        run("signal", "make", "sine", plain, "length=3s");
        assertEquals(1, run("signal", "align", plain, "--played", played, "--json"));
        assertFalse(json().path("found").booleanValue());
        assertTrue(errors().contains("start marker was not found"), errors());
        assertEquals(1, run("signal", "align", played, "--played", plain));
        assertTrue(errors().contains("no markers"), errors());
        assertEquals(3, run("signal", "align", played, "--played", played, "--channel", "3"));
        assertEquals(3, run("signal", "align", path("none.wav"), "--played", played));
    }

    @Test
    void makesTheSet() throws Exception {
        assertEquals(0, run("signal", "set", path("player"), "--channels", "mono", "--overlap-db", "6", "--json"));
        assertEquals(15, json().path("files").size());
        assertEquals(-6, json().path("files").get(1).path("rmsDbfs").doubleValue(), 1e-12);
        assertTrue(Files.readString(folder.resolve("player/index.html")).contains("15-warm-up.wav"));
        assertTrue(Files.size(folder.resolve("player/01-sine-1kHz-full.wav")) > 2_600_000);
    }

    /** An output that counts what it takes. */
    private static final class Counter implements SoundOutput, SoundOutput.Feed {
        private long octets;

        @Override
        public List<String> devices() {
            return List.of("Output one", "Output two");
        }

        @Override
        public Feed open(String device, int sampleRateHz, int channels) throws IOException {
            if (!device.isEmpty()) {
                throw new IOException("There is no " + device + ".");
            }
            return this;
        }

        @Override
        public SampleFormat format() {
            return SampleFormat.INTEGER_16;
        }

        @Override
        public void write(byte[] frames) {
            octets += frames.length;
        }

        @Override
        public void stopAtOnce() {
            octets = -1;
        }

        @Override
        public void close() {
            // It has nothing to let go.
        }
    }

    private int play(Counter output, String... words) {
        out.reset();
        err.reset();
        Console console = new Console(new PrintStream(out), new PrintStream(err));
        CommandLine line = new CommandLine(new SignalPlayCommand(console, output));
        line.setExecutionExceptionHandler((failure, command, parsed) -> {
            console.message(failure.getMessage());
            return failure instanceof InputException ? ExitCodes.BAD_INPUT : ExitCodes.OUTSIDE_FAILURE;
        });
        return line.execute(words);
    }

    @Test
    void playsOnlyWhenTheLoudspeakersAreOff() {
        Counter output = new Counter();
        assertEquals(3, play(output, "sine", "length=1s"));
        assertTrue(errors().contains("--loudspeakers-off"), errors());
        assertEquals(0, output.octets);
        assertEquals(0, play(output, "sine", "length=1s", "--loudspeakers-off"));
        assertEquals(48_000 * 4, output.octets);
        assertEquals(4, play(output, "sine", "length=1s", "--loudspeakers-off", "--device", "three"));
        assertTrue(errors().contains("There is no three."), errors());
        assertEquals(0, play(output, "--devices"));
        assertTrue(text().contains("Output two"), text());
        assertEquals(3, play(output));
    }
}
