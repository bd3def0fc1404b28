// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.units.text.Messages;

/** The computer's sound cards. */
public final class SoundCards implements SoundOutput {
    private static final double BUFFER_SECONDS = 0.1;
    private static final List<SampleFormat> FORMATS = List.of(SampleFormat.INTEGER_24, SampleFormat.INTEGER_16);

    /** Finds them when they are asked for. */
    public SoundCards() {
        // keeps nothing
    }

    /**
     * Returns the first sound card that has a line of some kind.
     *
     * @param device a part of its name, in any case; empty for the usual one
     */
    public static Optional<Mixer> find(String device, Line.Info wanted) {
        String part = device.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(AudioSystem.getMixerInfo())
                .filter(info -> info.getName().toLowerCase(Locale.ROOT).contains(part))
                .map(AudioSystem::getMixer)
                .filter(mixer -> mixer.isLineSupported(wanted))
                .findFirst();
    }

    /**
     * Returns a line of the first sound card that has it.
     *
     * @param device a part of its name, in any case; empty for the usual one
     * @throws IOException if there is none, or it is in use
     */
    public static Line line(String device, Line.Info wanted) throws IOException {
        Mixer mixer = find(device, wanted)
                .orElseThrow(() -> new IOException(Messages.of(SoundCards.class).text("failure.noCard", wanted)));
        try {
            return mixer.getLine(wanted);
        } catch (LineUnavailableException e) {
            throw new IOException(Messages.of(SoundCards.class).text("failure.cardInUse"), e);
        }
    }

    @Override
    public List<String> devices() {
        DataLine.Info any = new DataLine.Info(SourceDataLine.class, null);
        return Arrays.stream(AudioSystem.getMixerInfo())
                .filter(info -> AudioSystem.getMixer(info).isLineSupported(any))
                .map(Mixer.Info::getName)
                .toList();
    }

    @Override
    public Feed open(String device, int sampleRateHz, int channels) throws IOException {
        for (SampleFormat format : FORMATS) {
            AudioFormat wanted = new AudioFormat(sampleRateHz, format.bits(), channels, true, false);
            DataLine.Info info = new DataLine.Info(SourceDataLine.class, wanted);
            if (find(device, info).isPresent()) {
                SourceDataLine line = (SourceDataLine) line(device, info);
                try {
                    line.open(wanted, (int) (BUFFER_SECONDS * sampleRateHz) * wanted.getFrameSize());
                } catch (LineUnavailableException e) {
                    throw new IOException(Messages.of(SoundCards.class).text("failure.outputInUse"), e);
                }
                return new LineFeed(line, format);
            }
        }
        throw new IOException(Messages.of(SoundCards.class).text("failure.noOutput"));
    }
}
