// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.ohmstead.jobs.RecordingFolders;
import org.ohmstead.load.LoadStepPrecaution;
import org.ohmstead.load.NetworkPartSharing;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.bench.OperatorPort;
import org.ohmstead.measure.bench.ReplayedBenchDriver;
import org.ohmstead.measure.bench.SimulatedBenchDriver;
import org.ohmstead.measure.bench.SoundCardBenchDriver;
import org.ohmstead.measure.bench.TypedBenchDriver;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.standard.BurstPower;
import org.ohmstead.measure.standard.GainAndSensitivity;
import org.ohmstead.measure.standard.IdleDraw;
import org.ohmstead.measure.standard.PowerAtEndPoint;
import org.ohmstead.thermal.plan.ThermalStepPrecaution;

/** The plug-ins of the product without a framework, and more that a test adds. */
final class BuiltPlugins implements PluginSource {
    private final List<Consumer<Catalog>> more = new ArrayList<>();

    BuiltPlugins with(Consumer<Catalog> another) {
        more.add(another);
        return this;
    }

    @Override
    public Catalog catalog(OperatorPort operator) {
        Catalog catalog = new Catalog();
        for (Measurement measurement :
                List.of(new PowerAtEndPoint(), new BurstPower(), new GainAndSensitivity(), new IdleDraw())) {
            catalog.bindMeasurement(measurement);
        }
        catalog.bindDriver(new SimulatedBenchDriver());
        catalog.bindDriver(new ReplayedBenchDriver(new RecordingFolders()));
        catalog.bindDriver(new TypedBenchDriver(operator));
        catalog.bindDriver(new SoundCardBenchDriver());
        ThermalStepPrecaution heat = new ThermalStepPrecaution();
        heat.bindSharing(new NetworkPartSharing());
        catalog.bindPrecaution(heat);
        catalog.bindPrecaution(new LoadStepPrecaution());
        more.forEach(each -> each.accept(catalog));
        return catalog;
    }
}
