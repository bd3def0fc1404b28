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
        description = {"${bundle:signal.play.does}", ""},
        footer = {"", "${bundle:signal.play.example}", "${bundle:signal.play.example2}"})
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

    @Parameters(index = "0", arity = "0..1", paramLabel = "KIND", descriptionKey = "signal.play.KIND")
    private String kind;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "NAME=VALUE", descriptionKey = "signal.play.NAME-VALUE")
    private List<String> settings;

    @Option(names = "--devices", descriptionKey = "signal.play.devices")
    private boolean devices;

    @Option(names = "--device", paramLabel = "NAME", defaultValue = "", descriptionKey = "signal.play.device")
    private String device;

    @Option(names = "--volume-db", paramLabel = "DB", defaultValue = "-20", descriptionKey = "signal.play.volume-db")
    private String volumeDb;

    @Option(names = "--fade-seconds", paramLabel = "S", defaultValue = "5", descriptionKey = "signal.play.fade-seconds")
    private String fadeSeconds;

    @Mixin
    private FileOptions stored;

    @Option(names = "--repeat", descriptionKey = "signal.play.repeat")
    private boolean repeat;

    @Option(names = "--loudspeakers-off", descriptionKey = "signal.play.loudspeakers-off")
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
            throw new InputException(Texts.of("play.noKind"));
        }
        Stimulus stimulus = signal.stimulus(kind, settings);
        SignalPlayer.Order order = new SignalPlayer.Order(
                device,
                stored.channels(),
                Quantities.within(volumeDb, Unit.DECIBEL, LOWEST_VOLUME_DB, 0, "--volume-db"),
                Quantities.within(fadeSeconds, Unit.SECOND, SHORTEST_FADE, LONGEST_FADE, "--fade-seconds"),
                repeat);
        if (!loudspeakersOff) {
            throw new InputException(Texts.of("play.cautions", String.join(" ", SignalCautions.all())));
        }
        stimulus.remarks().forEach(remark -> console.status(remark.sentence()));
        CompletableFuture<Optional<String>> over = new CompletableFuture<>();
        try (SignalPlayer player = new SignalPlayer(output)) {
            player.play(stimulus, order, over::complete);
            console.status(
                    repeat
                            ? Texts.of("play.forEver")
                            : Texts.of("play.playing", Texts.time(stimulus.durationSeconds())));
            Optional<String> trouble = over.get();
            if (trouble.isPresent()) {
                throw new OutsideException(trouble.get());
            }
        }
        return ExitCodes.DONE;
    }
}
