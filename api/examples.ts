// What GraphiQL opens with: queries that work on the demo lab.
export const exampleQueries = `# What is open, and can I use it? Most urgent first. Press the run button.
query OpenNow {
  containers(first: 20, filter: { isOpen: true }) {
    totalCount
    nodes {
      label
      sorbent { name }
      lot { lotNumber }
      room { name }
      openedAt
      dryGrams
      exposure { state scoopWaterFraction scoopLow scoopHigh hoursToLimit reason }
    }
  }
}

# The silica that is good to use, in every room.
query GoodSilica {
  containers(first: 20, filter: { sorbent: "silica", state: [GOOD] }) {
    nodes { label asReceivedGrams room { name } exposure { meanWaterFraction hoursToLimitOpen } }
  }
}

# The air of a room.
query Air {
  room(name: "wet bench") { name temperatureC relativeHumidityPercent }
}
`;
