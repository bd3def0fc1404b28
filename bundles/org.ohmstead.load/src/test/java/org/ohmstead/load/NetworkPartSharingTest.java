// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartShare;

class NetworkPartSharingTest {
    private static final Part PART = new Part("8R2", 8.2, 0.05, 100, 25, 250, Mounting.HEAT_SINK, 1);

    // Closed form: in parallel power goes by 1/R, in series by R.
    @Test
    void sharesByOhmsLawAndFindsThePartsOfTheStock() {
        LoadBranch branch = new LoadBranch(4.1, 0, 0, "(8R2||8R2)+4R1@50W");
        List<PartShare> shares = new NetworkPartSharing().shares(List.of(PART), branch);
        assertEquals(3, shares.size());
        assertEquals(0.25, shares.get(0).powerRatio(), 1e-12);
        assertEquals(0.25, shares.get(1).powerRatio(), 1e-12);
        assertEquals(0.5, shares.get(2).powerRatio(), 1e-12);
        assertEquals(PART, shares.get(1).part().orElseThrow());
        assertEquals(50, shares.get(2).part().orElseThrow().ratedWatts());
    }

    @Test
    void knowsNoPartOfAMereResistanceAndNothingOfWhatCannotBeRead() {
        NetworkPartSharing sharing = new NetworkPartSharing();
        List<PartShare> shares = sharing.shares(List.of(), new LoadBranch(4, 0, 0, "4R"));
        assertEquals(1, shares.get(0).powerRatio());
        assertTrue(shares.get(0).part().isEmpty());
        assertEquals(List.of(), sharing.shares(List.of(), new LoadBranch(4, 0, 0, "")));
        assertEquals(List.of(), sharing.shares(List.of(), new LoadBranch(4, 0, 0, "4R||")));
    }
}
