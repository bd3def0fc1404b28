// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import org.ohmstead.signal.stimulus.SignalPlayer;
import org.ohmstead.signal.stimulus.SoundOutput;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plays a test signal by the sound card. */
@Command(
        name = "play",
        description = {
            "Play a test signal by the sound card. The volume begins 60 dB lower and comes up by a fade; Ctrl+C falls silent at once.",
            ""
        },
        footer = {
            "",
            "Example: ohmstead signal play sine frequency=1kHz --loudspeakers-off --volume-db -20",
            "Example: ohmstead signal play --devices"
        })
final class SignalPlayCommand implements Callable<Integer> {
    private static final double LOWEST_VOLUME_DB = -100;
    private static final double SHORTEST_FADE = 0.5;
    private static final double LONGEST_FADE = 60;

    private final Console console;
    private final SoundOutput output;

    @Mixin
    private HelpOption help;

    @Mixin
    private StimulusOptions signal;

    @Parameters(index = "0", arity = "0..1", paramLabel = "KIND", description = "The kind of signal, such as sine.")
    private String kind;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "NAME=VALUE", description = "Settings.")
    private List<String> settings;

    @Option(names = "--devices", description = "List the outputs instead of playing.")
    private boolean devices;

    @Option(
            names = "--device",
            paramLabel = "NAME",
            defaultValue = "",
            description = "A part of the output's name; without it the usual one.")
    private String device;

    @Option(
            names = "--volume-db",
            paramLabel = "DB",
            defaultValue = "-20",
            description = "How far the signal is turned down, -100 to 0 (default -20).")
    private String volumeDb;

    @Option(
            names = "--fade-seconds",
            paramLabel = "S",
            defaultValue = "5",
            description = "How long the volume takes to come up, 0.5 to 60 (default 5).")
    private String fadeSeconds;

    @Mixin
    private FileOptions stored;

    @Option(names = "--repeat", description = "Play it over and over until Ctrl+C.")
    private boolean repeat;

    @Option(
            names = "--loudspeakers-off",
            description = "Says that no loudspeaker hangs on the amplifier; nothing is played without it.")
    private boolean loudspeakersOff;

    SignalPlayCommand(Console console, SoundOutput output) {
        this.console = console;
        this.output = output;
    }

    @Override
    public Integer call() throws Exception {
        if (devices) {
            output.devices().forEach(console::line);
            return ExitCodes.DONE;
        }
        if (kind == null) {
            throw new InputException(
                    "No kind of signal is named. Name one, such as sine; ohmstead signal list shows them.");
        }
        Stimulus stimulus = signal.stimulus(kind, settings);
        SignalPlayer.Order order = new SignalPlayer.Order(
                device,
                stored.channels(),
                Quantities.within(volumeDb, Unit.DECIBEL, LOWEST_VOLUME_DB, 0, "--volume-db"),
                Quantities.within(fadeSeconds, Unit.SECOND, SHORTEST_FADE, LONGEST_FADE, "--fade-seconds"),
                repeat);
        if (!loudspeakersOff) {
            throw new InputException("Nothing is played. " + String.join(" ", SignalCautions.ALL)
                    + " When the loudspeakers are off, say so with --loudspeakers-off.");
        }
        stimulus.remarks().forEach(remark -> console.status(remark.sentence()));
        CompletableFuture<Optional<String>> over = new CompletableFuture<>();
        try (SignalPlayer player = new SignalPlayer(output)) {
            player.play(stimulus, order, over::complete);
            console.status(
                    "Playing for " + (repeat ? "ever" : Texts.time(stimulus.durationSeconds())) + "; Ctrl+C stops.");
            Optional<String> trouble = over.get();
            if (trouble.isPresent()) {
                throw new OutsideException(trouble.get());
            }
        }
        return ExitCodes.DONE;
    }
}
