// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/**
 * Numbered files for a player without a computer, with an index as text and as a page to print.
 *
 * @param items the files in their order, 1 to 99
 * @param overlapDb how far below full scale the end point is set, 0 or above
 */
public record SignalSet(List<Item> items, double overlapDb) {
    /** The index as text, in the set's folder. */
    public static final String TEXT_INDEX = "index.txt";

    /** The index as a page, in the set's folder. */
    public static final String PAGE_INDEX = "index.html";

    private static final double USUAL_SECONDS = 30;

    /** Copies the files and checks the ranges. */
    public SignalSet {
        items = List.copyOf(items);
        if (items.isEmpty() || items.size() > 99) {
            throw new IllegalArgumentException("items must be 1 to 99, but are " + items.size());
        }
        Checks.within("overlapDb", overlapDb, 0, 40);
    }

    /**
     * One file.
     *
     * @param name its name, without number and ending; also that of the sentence on what it is for
     * @param signal what is in it
     * @param marked whether markers stand around it
     */
    public record Item(String name, TestSignal signal, boolean marked) {}

    /**
     * How the files are made.
     *
     * @param sampleRateHz samples per second
     * @param format how samples are stored
     * @param channels which channels carry the signals
     * @param seed chooses the dither
     */
    public record Making(int sampleRateHz, SampleFormat format, ChannelUse channels, long seed) {
        /** What every player takes: 44100 samples per second, 16 bits, both channels. */
        public static final Making USUAL = new Making(44_100, SampleFormat.INTEGER_16, ChannelUse.BOTH, 1);
    }

    /**
     * Returns the standard set.
     *
     * @param overlapDb how far below full scale the end point is set, 0 to 40; 10 dB is common
     */
    public static SignalSet standard(double overlapDb) {
        Checks.within("overlapDb", overlapDb, 0, 40);
        double level = 0 - overlapDb;
        List<Item> items = new ArrayList<>();
        items.add(sine("sine-1kHz-full", 1000, 0));
        items.add(sine("sine-1kHz-overlap", 1000, level));
        items.add(sine("sine-1kHz-20dB-lower", 1000, level - 20));
        items.add(sine("sine-40Hz", 40, level));
        items.add(sine("sine-100Hz", 100, level));
        items.add(sine("sine-10kHz", 10_000, level));
        items.add(bursts("bursts-1kHz", 1000));
        items.add(bursts("bursts-50Hz", 50));
        items.add(new Item("log-sweep", new TestSignal.LogSweep(20, 20_000, level - 10, 20, 0.05, 0.02), true));
        items.add(new Item("stepped-sweep", new TestSignal.SteppedSweep(20, 20_000, 3, 3, level - 10), false));
        items.add(
                new Item("pink-noise", new TestSignal.PinkNoise(level - 10, 12, 20, 20_000, 1, USUAL_SECONDS), false));
        items.add(new Item("modulation-pair", new TestSignal.TwoTone(60, 7000, 4, level, USUAL_SECONDS), false));
        items.add(new Item("difference-pair", new TestSignal.TwoTone(19_000, 20_000, 1, level, USUAL_SECONDS), false));
        items.add(new Item("multi-tone", new TestSignal.MultiTone(octaves(), level - 10, USUAL_SECONDS), false));
        items.add(new Item("warm-up", new TestSignal.WarmUp(1000, level, 4 * USUAL_SECONDS), false));
        return new SignalSet(items, overlapDb);
    }

    private static Item sine(String name, double hertz, double levelDbfs) {
        return new Item(name, new TestSignal.Sine(hertz, levelDbfs, USUAL_SECONDS), false);
    }

    private static Item bursts(String name, double hertz) {
        return new Item(name, new TestSignal.ToneBursts(hertz, 0, TestSignal.ToneBursts.USUAL, USUAL_SECONDS), false);
    }

    private static List<TestSignal.Tone> octaves() {
        List<TestSignal.Tone> tones = new ArrayList<>();
        for (double hertz = 31.25; hertz < 20_000; hertz *= 2) {
            tones.add(new TestSignal.Tone(hertz, 0));
        }
        return tones;
    }

    /** Returns the name of a file, from 0: "01-sine-1kHz-full.wav". */
    public String fileName(int index) {
        return String.format(
                Locale.ROOT, "%02d-%s.wav", index + 1, items.get(index).name());
    }

    /** Returns a file as it is made, from 0. */
    public SignalFile file(int index, Making making) {
        Item item = items.get(index);
        Stimulus stimulus = Stimulus.of(item.signal(), making.sampleRateHz(), true);
        return new SignalFile(stimulus, making.format(), making.channels(), item.marked(), making.seed() + index);
    }

    /** Returns the size of all files in bytes. */
    public double bytes(Making making) {
        double sum = 0;
        for (int i = 0; i < items.size(); i++) {
            sum += file(i, making).fileBytes();
        }
        return sum;
    }

    /**
     * Writes the files and both forms of the index, in the language spoken now. Files of the same names are replaced, others left alone.
     *
     * @param folder where they will stand; made when it is not there
     * @param progress hears how far it has come
     * @return what came of each file
     * @throws CaptureException if something cannot be written
     * @throws java.util.concurrent.CancellationException if the progress said to stop; files that are whole stay
     */
    public List<SignalFile.Written> write(Path folder, Making making, RenderProgress progress) throws CaptureException {
        List<SignalFile> files = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            files.add(file(i, making));
        }
        SetIndex index = new SetIndex(this, files, making, Language.current());
        List<SignalFile.Written> written = new ArrayList<>();
        try {
            Files.createDirectories(folder);
            WholeFiles.writeText(folder.resolve(TEXT_INDEX), index.text());
            WholeFiles.writeText(folder.resolve(PAGE_INDEX), index.page());
        } catch (IOException e) {
            throw new CaptureException(Messages.of(SignalSet.class).text("failure.folder", folder, e.getMessage()), e);
        }
        double all = bytes(making);
        double done = 0;
        for (int i = 0; i < files.size(); i++) {
            double before = done / all;
            double share = files.get(i).fileBytes() / all;
            written.add(
                    files.get(i).write(folder.resolve(fileName(i)), ratio -> progress.goOn(before + ratio * share)));
            done += files.get(i).fileBytes();
        }
        return List.copyOf(written);
    }
}
