// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.model.Part;

/**
 * The resistors at hand.
 *
 * @param items kinds of resistors with how many there are of each; ids are unique
 */
public record Stock(List<Item> items) {
    /** Nothing at hand. */
    public static final Stock EMPTY = new Stock(List.of());

    private static final int MOST_OF_A_KIND = 10_000;

    /**
     * Some resistors of one kind.
     *
     * @param resistor the kind
     * @param count how many, 1 to 10,000
     */
    public record Item(Resistor resistor, int count) {
        public Item {
            Checks.present(resistor, "resistor");
            Checks.within(count, 1, MOST_OF_A_KIND, "count");
        }
    }

    public Stock {
        items = List.copyOf(items);
        Map<String, Item> byId = new LinkedHashMap<>();
        for (Item item : items) {
            if (byId.put(item.resistor().id(), item) != null) {
                throw new IllegalArgumentException("items holds the id \""
                        + item.resistor().id() + "\" twice; each kind of resistor needs an id of its own");
            }
        }
    }

    /** Returns the stock of a project's bench. */
    public static Stock of(List<Part> parts) {
        List<Item> items = new ArrayList<>();
        for (Part part : parts) {
            items.add(new Item(Resistor.of(part), part.count()));
        }
        return new Stock(items);
    }

    /** Returns the kind with an id, or empty. */
    public Optional<Item> find(String id) {
        return items.stream().filter(item -> item.resistor().id().equals(id)).findFirst();
    }

    /** Returns how many resistors there are in all. */
    public int pieces() {
        return items.stream().mapToInt(Item::count).sum();
    }
}
